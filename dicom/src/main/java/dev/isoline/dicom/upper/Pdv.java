package dev.isoline.dicom.upper;

/**
 * Header of a presentation data value, PS3.8 9.3.5.1 and E.2: one fragment of a message.
 *
 * @param contextId presentation context
 * @param command a fragment of the command set, else of the data set
 * @param last the last of it
 */
public record Pdv(int contextId, boolean command, boolean last) {

    private static final int COMMAND = 1;
    private static final int LAST = 2;

    static Pdv of(int contextId, int control) {
        return new Pdv(contextId, (control & COMMAND) != 0, (control & LAST) != 0);
    }

    /** Message control header. */
    int control() {
        return (command ? COMMAND : 0) | (last ? LAST : 0);
    }
}

package dev.isoline.dicom;

import java.io.IOException;

/** A data set breaks a rule; the message names the element and the rule, never a value. */
public final class DicomException extends IOException {

    private static final long serialVersionUID = 1;

    private final int tag;

    /**
     * @param tag the element at fault
     * @param fault what is wrong with it, without a leading subject
     */
    public DicomException(int tag, String fault) {
        super(Tag.format(tag) + Dictionary.name(tag).map(n -> " " + n).orElse("") + " " + fault);
        this.tag = tag;
    }

    /**
     * A fault of no element.
     *
     * @param sentence what is wrong
     */
    public DicomException(String sentence) {
        super(sentence);
        this.tag = 0;
    }

    /** The element at fault; 0 where it is none. */
    public int tag() {
        return tag;
    }
}

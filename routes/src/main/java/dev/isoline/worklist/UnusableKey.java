package dev.isoline.worklist;

import dev.isoline.dicom.Tag;

/** A key cannot be matched as it stands; the message names the element, never a value. */
final class UnusableKey extends Exception {

    private static final long serialVersionUID = 1;

    /**
     * @param tag the element at fault
     * @param fault what is wrong, in few words: an Error Comment (0000,0902) holds 64 characters
     */
    UnusableKey(int tag, String fault) {
        super(Tag.format(tag) + " " + fault);
    }
}

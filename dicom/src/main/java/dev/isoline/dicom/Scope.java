package dev.isoline.dicom;

/**
 * Where elements are being read: up to a position, or up to a delimiter before it.
 *
 * @param end first position behind
 * @param delimited true where a delimiter ends it
 * @param depth sequences around
 * @param set character set that holds, PS3.5 7.5.3
 */
record Scope(TransferSyntax syntax, long end, boolean delimited, int depth, CharacterSet set) {

    /** The whole of a source. */
    static Scope whole(TransferSyntax syntax, ByteSource source) {
        return new Scope(syntax, source.size(), false, 0, CharacterSet.ISO_IR_6);
    }

    /** An item of this sequence. */
    Scope item(long itemEnd, boolean open) {
        return new Scope(syntax, itemEnd, open, depth, set);
    }

    /** A sequence in this data set. */
    Scope sequence(TransferSyntax inner, long sequenceEnd, boolean open) {
        return new Scope(inner, sequenceEnd, open, depth + 1, set);
    }

    Scope in(CharacterSet other) {
        return new Scope(syntax, end, delimited, depth, other);
    }

    boolean explicit() {
        return syntax == TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
    }
}

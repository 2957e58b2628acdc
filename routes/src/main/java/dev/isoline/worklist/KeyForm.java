package dev.isoline.worklist;

/** Forms of a date or time key, PS3.4 C.2.2.2.5. */
enum KeyForm {
    /** One value. */
    SINGLE,
    /** {@code a-b}. */
    BETWEEN,
    /** {@code a-}. */
    FROM,
    /** {@code -b}. */
    UNTIL;

    static KeyForm of(boolean range, Object from, Object to) {
        if (!range) {
            return SINGLE;
        }
        if (from == null) {
            return UNTIL;
        }
        return to == null ? FROM : BETWEEN;
    }
}

package dev.isoline.hl7v2;

/** HAPI counts on four encoding characters in MSH-2; senders declare three, or five (v2.7). */
final class FourEncodingCharacters {

    /** Cannot occur in HL7 v2 text, so that no text is taken for subcomponents. */
    private static final char NEVER_IN_TEXT = '\u001f';

    private FourEncodingCharacters() {}

    static String apply(String message, Delimiters delimiters) {
        String declared = delimiters.encodingCharacters();
        return switch (declared.length()) {
            case 3 -> replace(message, declared, declared + NEVER_IN_TEXT);
            case 5 -> withoutTruncation(message, delimiters);
            default -> message;
        };
    }

    /** {@code P} is the escape of the truncation character, HL7 v2.7 ch. 2.7.1. */
    private static String withoutTruncation(String message, Delimiters delimiters) {
        String declared = delimiters.encodingCharacters();
        String escaped = delimiters.escape() + "P" + delimiters.escape();
        return replace(message, declared, declared.substring(0, 4))
                .replace(escaped, declared.substring(4));
    }

    private static String replace(String message, String declared, String four) {
        return message.substring(0, 4) + four + message.substring(4 + declared.length());
    }
}

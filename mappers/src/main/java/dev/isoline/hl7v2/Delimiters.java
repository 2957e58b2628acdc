package dev.isoline.hl7v2;

import java.util.Optional;

/**
 * The delimiters a message declares for itself, HL7 v2.5.1 ch. 2.5.4 (MSH-1 and MSH-2).
 *
 * @param field MSH-1
 * @param encodingCharacters MSH-2 as sent: component, repetition, escape and, where the sender has
 *     one, subcomponent; a fifth character is the truncation character of v2.7
 */
public record Delimiters(char field, String encodingCharacters) {

    public static final Delimiters RECOMMENDED = new Delimiters('|', "^~\\&");

    /**
     * Of a line that begins with a header segment (MSH, BHS, FHS); empty when they make no sense.
     */
    static Optional<Delimiters> of(String line) {
        if (line.length() < 7) {
            return Optional.empty();
        }
        int end = line.indexOf(line.charAt(3), 4);
        var declared =
                new Delimiters(line.charAt(3), line.substring(4, end < 0 ? line.length() : end));
        return Optional.of(declared).filter(Delimiters::isUsable);
    }

    private boolean isUsable() {
        String all = field + encodingCharacters;
        return encodingCharacters.length() >= 3
                && encodingCharacters.length() <= 5
                && all.chars().distinct().count() == all.length()
                && all.chars().noneMatch(c -> Character.isLetterOrDigit(c) || c < ' ');
    }

    public char component() {
        return encodingCharacters.charAt(0);
    }

    public char repetition() {
        return encodingCharacters.charAt(1);
    }

    public char escape() {
        return encodingCharacters.charAt(2);
    }

    /** Some senders declare none; then an ampersand in their text is only an ampersand. */
    public Optional<Character> subcomponent() {
        return encodingCharacters.length() > 3
                ? Optional.of(encodingCharacters.charAt(3))
                : Optional.empty();
    }

    /** Text as it may stand in a field, ch. 2.7. */
    public String escape(String text) {
        var escaped = new StringBuilder(text.length());
        text.chars().forEach(c -> escaped.append(escaped((char) c)));
        return escaped.toString();
    }

    private String escaped(char c) {
        int at = (field + encodingCharacters).indexOf(c);
        if (c == '\r' || c == '\n') {
            return " ";
        }
        return at < 0 || at > 4
                ? String.valueOf(c)
                : escape() + "FSRET".substring(at, at + 1) + escape();
    }
}

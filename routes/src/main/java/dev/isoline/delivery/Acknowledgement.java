package dev.isoline.delivery;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Judges the answer to an HL7 v2 message (HL7 v2.5.1 ch. 2.9; MSA-1 table 0008, ERR-3 table 0357).
 */
final class Acknowledgement {

    /** MSH-9, MSH-11 or MSH-12 does not fit the receiver: the same bytes never will. */
    private static final Pattern UNSUPPORTED = Pattern.compile("20[0-3]");

    private Acknowledgement() {}

    static Verdict judge(byte[] sent, byte[] answer) {
        String text = new String(answer, StandardCharsets.ISO_8859_1);
        Optional<String[]> msa = segment(text, "MSA");
        if (msa.isEmpty()) {
            return Verdict.retry("an answer without MSA");
        }
        if (!field(msa.get(), 2).equals(controlId(sent))) {
            return Verdict.retry("an answer to another message");
        }
        return judge(field(msa.get(), 1), segment(text, "ERR").orElse(new String[0]));
    }

    /**
     * AR without such a code is a failure that has nothing to do with the message; CR is only for
     * messages that do not fit.
     */
    private static Verdict judge(String code, String[] err) {
        String error = code + words(err);
        return switch (code) {
            case "AA", "CA" -> Verdict.delivered(code);
            case "AR" ->
                    UNSUPPORTED.matcher(errorCode(err)).matches()
                            ? Verdict.refused(error)
                            : Verdict.retry(error);
            case "AE", "CE", "CR" -> Verdict.refused(error);
            default -> Verdict.retry("an answer outside table 0008");
        };
    }

    /** Code and place only: the texts of ERR may quote the patient. */
    private static String words(String[] err) {
        String code = errorCode(err);
        String place = field(err, 2);
        return (code.isEmpty() ? "" : ", ERR-3 " + code)
                + (place.matches("[A-Z0-9^]{3,40}") ? " at " + place.replace('^', '-') : "");
    }

    /** ERR-3.1, or ERR-1.4.1 before v2.5. */
    private static String errorCode(String[] err) {
        String[] eld = field(err, 1).split("\\^");
        String code = eld.length > 3 ? eld[3].split("&")[0] : field(err, 3).split("\\^")[0];
        return code.matches("\\d{1,3}") ? code : "";
    }

    private static String controlId(byte[] sent) {
        String text = new String(sent, StandardCharsets.ISO_8859_1);
        // MSH-1 is the separator itself, so MSH-10 is the ninth field after it.
        return segment(text, "MSH").map(msh -> field(msh, 9)).orElse("");
    }

    private static Optional<String[]> segment(String message, String name) {
        String separator = message.length() > 3 ? Pattern.quote(message.substring(3, 4)) : "\\|";
        return Stream.of(message.split("[\r\n]+"))
                .filter(line -> line.startsWith(name))
                .map(line -> line.split(separator, -1))
                .findFirst();
    }

    private static String field(String[] segment, int number) {
        return number < segment.length ? segment[number] : "";
    }
}

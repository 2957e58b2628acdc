package dev.isoline.worklist;

import java.text.Normalizer;
import java.text.Normalizer.Form;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * The form person names are matched in: without case, without accents, without trailing empty
 * components. PS3.4 C.2.2.2.1 and C.2.2.2.4 leave it to the application and its conformance
 * statement.
 */
final class NameForm {

    private static final Pattern MARKS = Pattern.compile("\\p{M}+");

    private NameForm() {}

    /** One component group of a VR PN, or a pattern for one. */
    static String of(String name) {
        String plain = MARKS.matcher(Normalizer.normalize(name, Form.NFD)).replaceAll("");
        return letters(plain.toUpperCase(Locale.ROOT))
                .replaceAll("\\s+", " ")
                .replaceAll(" ?\\^ ?", "^")
                .replaceFirst("\\^+$", "")
                .strip();
    }

    /** Letters that are no letter with a mark; ß is SS already. */
    private static String letters(String name) {
        return name.replace("Æ", "AE")
                .replace("Œ", "OE")
                .replace("Ø", "O")
                .replace("Ł", "L")
                .replace("Đ", "D")
                .replace("Ð", "D")
                .replace("Þ", "TH")
                .replace("ı", "I");
    }
}

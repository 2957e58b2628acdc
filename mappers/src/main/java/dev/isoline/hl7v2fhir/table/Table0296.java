package dev.isoline.hl7v2fhir.table;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * HL7 table 0296, primary language, to BCP 47, the only codes R4 allows. The concept map
 * PrimaryLanguage names targets without sources, since the table is the user's; ISO 639 codes of
 * two and three letters are taken, with a region where the map has one.
 */
public final class Table0296 {

    public static final String SYSTEM = "urn:ietf:bcp:47";

    private static final Set<String> TWO_LETTERS = Set.of(Locale.getISOLanguages());

    private static final Map<String, String> THREE_LETTERS =
            Arrays.stream(Locale.getISOLanguages())
                    .collect(
                            Collectors.toMap(
                                    l -> new Locale(l).getISO3Language(), l -> l, (a, b) -> a));

    private Table0296() {}

    /** Empty for what is no ISO 639 code. */
    public static Optional<String> toFhir(String code) {
        String[] parts = code.split("[-_]", 2);
        String language = parts[0].toLowerCase(Locale.ROOT);
        String two = TWO_LETTERS.contains(language) ? language : THREE_LETTERS.get(language);
        if (two == null || parts.length > 1 && !parts[1].matches("[A-Za-z]{2}")) {
            return Optional.empty();
        }
        return Optional.of(parts.length == 1 ? two : two + "-" + parts[1].toUpperCase(Locale.ROOT));
    }
}

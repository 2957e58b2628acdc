package dev.isoline.fhirdicom;

import dev.isoline.ecgdicom.OrderContext.Code;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Codings of an order to a DICOM code: the first of a system that has a coding scheme designator
 * (PS3.16 table 8-1) and a value of at most 16 characters; else the meaning alone.
 */
public final class ProcedureCode {

    /** Designators from memory. */
    private static final Map<String, String> SCHEMES =
            Map.of(
                    "http://loinc.org", "LN",
                    "http://snomed.info/sct", "SCT",
                    "http://www.ama-assn.org/go/cpt", "C4");

    private ProcedureCode() {}

    /** One coding; empty texts where it says nothing. */
    public record Coded(String system, String code, String display) {

        private boolean hasScheme() {
            return SCHEMES.containsKey(system)
                    && !code.isEmpty()
                    && code.length() <= DescriptiveText.SH;
        }
    }

    /**
     * @param text words for the whole, used where no coding has any
     */
    public static Code of(List<Coded> codings, String text) {
        String other =
                Stream.concat(codings.stream().map(Coded::display), Stream.of(text))
                        .filter(words -> !words.isEmpty())
                        .findFirst()
                        .orElse("");
        return codings.stream()
                .filter(Coded::hasScheme)
                .findFirst()
                .map(coding -> code(coding, coding.display().isEmpty() ? other : coding.display()))
                .orElseGet(() -> new Code("", "", cut(other)));
    }

    private static Code code(Coded coding, String meaning) {
        return new Code(coding.code(), SCHEMES.get(coding.system()), cut(meaning));
    }

    private static String cut(String text) {
        return DescriptiveText.cut(text, DescriptiveText.LO);
    }
}

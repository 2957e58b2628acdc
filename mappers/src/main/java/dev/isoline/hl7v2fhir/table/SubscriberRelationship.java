package dev.isoline.hl7v2fhir.table;

import java.util.Locale;
import org.hl7.fhir.r4.model.Coding;

/**
 * HL7 table 0063 to the codes R4 binds Coverage.relationship to (subscriber-relationship). Our own
 * translation; the numbers are the relationship codes US payers use (common practice).
 */
public final class SubscriberRelationship {

    private static final String SYSTEM =
            "http://terminology.hl7.org/CodeSystem/subscriber-relationship";

    private SubscriberRelationship() {}

    /** {@code other} for whatever has no closer word. */
    public static Coding of(String code) {
        String word =
                switch (code.toUpperCase(Locale.ROOT)) {
                    case "SEL", "SELF", "S", "18", "ONESELF" -> "self";
                    case "SPO", "SPOUSE", "01" -> "spouse";
                    case "CHD", "NCH", "SCH", "FCH", "CHILD", "19" -> "child";
                    case "PAR", "MTH", "FTH", "PARENT" -> "parent";
                    case "DOM" -> "common";
                    default -> "other";
                };
        return new Coding().setSystem(SYSTEM).setCode(word);
    }

    public static boolean isSelf(String code) {
        return code != null && "self".equals(of(code).getCode());
    }
}

package dev.isoline.hl7v2fhir.table;

import java.util.Set;
import org.hl7.fhir.r4.model.CodeableConcept;

/** HL7 table 0203, identifier type. Rows: concept map IdentifierType, which keeps every code. */
public final class Table0203 {

    public static final String SYSTEM = "http://terminology.hl7.org/CodeSystem/v2-0203";

    private static final String CODES =
            "ACSN AM AMA AN ANON ANC AND ANT APRN ASID BA BC BCT BR BRN BSNR CC CONM CZ CY "
                    + "DDS DEA DI DFN DL DN DO DP DPM DR DS EI EN ESN FI GI GL GN HC JHN IND "
                    + "LACSN LANR LI LN LR MA MB MC MCD MCN MCR MCT MD MI MR MRT MS NBSNR NCT NE "
                    + "NH NI NII NIIP NP NPI OD PA PC PCN PE PEN PI PN PNT PPIN PPN PRC PRN PT "
                    + "QA RI RPH RN RR RRI RRP SID SL SN SP SR SS TAX TN TPR U UPIN USID VN VP "
                    + "VS WC WCN WP XX";

    /** Codes the published segment maps assign beside those of the concept map. */
    private static final Set<String> ASSIGNED = Set.of("PLAC", "FILL", "SB");

    private static final Set<String> TABLE = Set.of(CODES.split(" "));

    private Table0203() {}

    public static boolean holds(String code) {
        return TABLE.contains(code) || ASSIGNED.contains(code) || code.matches("NN[A-Z]{3}");
    }

    /** A code outside the table is kept as text. */
    public static CodeableConcept toFhir(String code) {
        var type = new CodeableConcept();
        if (holds(code)) {
            type.addCoding().setSystem(SYSTEM).setCode(code);
        } else {
            type.setText(code);
        }
        return type;
    }
}

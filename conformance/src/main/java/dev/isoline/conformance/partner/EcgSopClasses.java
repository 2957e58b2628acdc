package dev.isoline.conformance.partner;

import java.util.List;

/** SOP classes of what ECG monitoring leaves behind, PS3.4 B.5. */
public final class EcgSopClasses {

    public static final String TWELVE_LEAD_ECG = "1.2.840.10008.5.1.4.1.1.9.1.1";
    public static final String GENERAL_ECG = "1.2.840.10008.5.1.4.1.1.9.1.2";
    public static final String AMBULATORY_ECG = "1.2.840.10008.5.1.4.1.1.9.1.3";
    public static final String ENCAPSULATED_PDF = "1.2.840.10008.5.1.4.1.1.104.1";

    public static final List<String> ALL =
            List.of(TWELVE_LEAD_ECG, GENERAL_ECG, AMBULATORY_ECG, ENCAPSULATED_PDF);

    private EcgSopClasses() {}
}

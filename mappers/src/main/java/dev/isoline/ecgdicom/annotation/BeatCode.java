package dev.isoline.ecgdicom.annotation;

import dev.isoline.ecg.Beat;
import dev.isoline.ecgdicom.OrderContext.Code;
import java.util.Map;

/**
 * Beats by class as codes of CID 3335 ECG Annotation (PS3.16), scheme MDC. A beat nobody classified
 * is the R wave that was found: a class would claim more.
 */
final class BeatCode {

    // spotless:off
    private static final Map<Beat.Kind, Code> CODES = Map.of(
            Beat.Kind.N,            mdc("10:8208", "Normal beat (sinus beat, normal conduction)"),
            Beat.Kind.S,            mdc("10:8256", "Supraventricular premature contraction"),
            Beat.Kind.V,            mdc("10:8336", "Ventricular premature contraction beat"),
            Beat.Kind.F,            mdc("10:8352", "Fusion of ventricular and normal beat"),
            Beat.Kind.Q,            mdc("10:8736", "Unclassifiable beat"),
            Beat.Kind.UNCLASSIFIED, mdc("10:576",  "R wave"));
    // spotless:on

    /** No lead shows an ECG. */
    static final Code NO_SIGNAL = mdc("10:11248", "No ECG signal is available");

    private BeatCode() {}

    static Code of(Beat.Kind kind) {
        return CODES.get(kind);
    }

    private static Code mdc(String value, String meaning) {
        return new Code(value, "MDC", meaning);
    }
}

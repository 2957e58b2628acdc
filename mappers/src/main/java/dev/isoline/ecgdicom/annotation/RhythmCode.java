package dev.isoline.ecgdicom.annotation;

import dev.isoline.ecg.Rhythm;
import dev.isoline.ecgdicom.OrderContext.Code;
import java.util.Map;
import java.util.Optional;

/** Rhythms as codes of CID 3415 ECG Rhythm (PS3.16, as of 2022), scheme MDC. */
final class RhythmCode {

    // spotless:off
    private static final Map<Rhythm, Code> CODES = Map.ofEntries(
            code(Rhythm.ATRIAL_BIGEMINY,                  "10:9376",  "Atrial Bigeminy"),
            code(Rhythm.ATRIAL_FIBRILLATION,              "10:9472",  "Atrial fibrillation"),
            code(Rhythm.ATRIAL_FLUTTER,                   "10:9456",  "Atrial flutter"),
            code(Rhythm.VENTRICULAR_BIGEMINY,             "10:9920",  "Ventricular Bigeminy"),
            code(Rhythm.SECOND_DEGREE_BLOCK,              "10:9648",  "Second Degree AV Block"),
            code(Rhythm.IDIOVENTRICULAR,                  "10:9856",  "Idioventricular (ventricular escape) rhythm"),
            code(Rhythm.SINUS,                            "10:9216",  "Sinus Rhythm"),
            code(Rhythm.JUNCTIONAL,                       "10:9536",  "AV junctional (nodal) rhythm"),
            code(Rhythm.PRE_EXCITATION,                   "10:10096", "pre-excitation"),
            code(Rhythm.SINUS_BRADYCARDIA,                "10:9248",  "Sinus Bradycardia"),
            code(Rhythm.SUPRAVENTRICULAR_TACHYARRHYTHMIA, "10:9504",  "Supraventricular Tachycardia (atrial or junctional)"),
            code(Rhythm.VENTRICULAR_TRIGEMINY,            "10:9936",  "Ventricular Trigeminy"),
            code(Rhythm.VENTRICULAR_FLUTTER,              "10:10000", "Ventricular Flutter"),
            code(Rhythm.VENTRICULAR_TACHYCARDIA,          "10:9984",  "Ventricular Tachycardia (nonparoxysmal)"));
    // spotless:on

    private RhythmCode() {}

    /** Empty for a paced rhythm: the codes there are name a pacing mode, which nobody told. */
    static Optional<Code> of(Rhythm rhythm) {
        return Optional.ofNullable(CODES.get(rhythm));
    }

    private static Map.Entry<Rhythm, Code> code(Rhythm rhythm, String value, String meaning) {
        return Map.entry(rhythm, new Code(value, "MDC", meaning));
    }
}

package dev.isoline.ecgdicom.annotation;

import static dev.isoline.ecg.summary.EpisodeKind.*;
import static java.util.Map.entry;

import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecgdicom.OrderContext.Code;
import java.util.Map;
import java.util.Optional;

/**
 * Episodes the program finds as codes of CID 3415 ECG Rhythm (PS3.16, as of 2022), scheme MDC. A
 * kind whose codes there claim an origin nobody looked for, or that has none, is one of our own
 * scheme {@code 99ISOLINE}.
 */
final class EpisodeCode {

    // spotless:off
    private static final Map<EpisodeKind, Code> CODES = Map.ofEntries(
            entry(ATRIAL_FIBRILLATION,                  mdc("10:9472",  "Atrial fibrillation")),
            entry(SUSTAINED_VENTRICULAR_TACHYCARDIA,    mdc("10:9984",  "Ventricular Tachycardia (nonparoxysmal)")),
            entry(NONSUSTAINED_VENTRICULAR_TACHYCARDIA, mdc("10:10032", "Nonsustained Ventricular Tachycardia (paroxysmal)")),
            entry(ACCELERATED_IDIOVENTRICULAR_RHYTHM,   mdc("10:9888",  "Accelerated idioventricular rhythm")),
            entry(SLOW_VENTRICULAR_RUN,                 mdc("10:9968",  "Ventricular Run")),
            entry(SUPRAVENTRICULAR_TACHYCARDIA,         mdc("10:9504",  "Supraventricular Tachycardia (atrial or junctional)")),
            entry(SLOW_SUPRAVENTRICULAR_RUN,            mdc("10:9488",  "Supraventricular (atrial or junctional) Ectopic Rhythm")),
            entry(VENTRICULAR_COUPLET,                  mdc("10:9952",  "Ventricular Couplet")),
            entry(VENTRICULAR_BIGEMINY,                 mdc("10:9920",  "Ventricular Bigeminy")),
            entry(VENTRICULAR_TRIGEMINY,                mdc("10:9936",  "Ventricular Trigeminy")),
            entry(BRADYCARDIA,                          mdc("10:10432", "Bradycardia")),
            entry(TACHYCARDIA,                          own("tachycardia",  "Tachycardia")),
            entry(VENTRICULAR_TRIPLET,                  own("v-triplet",    "Ventricular triplet")),
            entry(SUPRAVENTRICULAR_COUPLET,             own("sv-couplet",   "Supraventricular couplet")),
            entry(SUPRAVENTRICULAR_TRIPLET,             own("sv-triplet",   "Supraventricular triplet")),
            entry(SUPRAVENTRICULAR_BIGEMINY,            own("sv-bigeminy",  "Supraventricular bigeminy")),
            entry(SUPRAVENTRICULAR_TRIGEMINY,           own("sv-trigeminy", "Supraventricular trigeminy")));
    // spotless:on

    private EpisodeCode() {}

    /** Empty for a pause, which is a measured interval. */
    static Optional<Code> of(EpisodeKind kind) {
        return Optional.ofNullable(CODES.get(kind));
    }

    private static Code mdc(String value, String meaning) {
        return new Code(value, "MDC", meaning);
    }

    /** Code Value (0008,0100) has 16 characters, too few for the codes of the FHIR report. */
    private static Code own(String value, String meaning) {
        return new Code(value, "99ISOLINE", meaning);
    }
}

package dev.isoline.ecgfhir;

import static dev.isoline.ecg.summary.EpisodeKind.*;

import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.fhir.Systems;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;

/**
 * Kinds of episode as codes: SNOMED CT as in PS3.16 CID 3230, IEEE 11073 as in CID 3415 (number
 * {@code 10:n} of DICOM is 10 * 65536 + n), always our own.
 */
final class EpisodeConcept {

    private record Codes(String snomed, int rhythm) {}

    // spotless:off
    private static final Map<EpisodeKind, Codes> CODES = Map.ofEntries(
            Map.entry(ATRIAL_FIBRILLATION,                  new Codes("49436004", 9472)),
            Map.entry(SUSTAINED_VENTRICULAR_TACHYCARDIA,    new Codes("25569003", 9984)),
            Map.entry(NONSUSTAINED_VENTRICULAR_TACHYCARDIA, new Codes("66657009", 10032)),
            Map.entry(ACCELERATED_IDIOVENTRICULAR_RHYTHM,   new Codes("",         9888)),
            Map.entry(SLOW_VENTRICULAR_RUN,                 new Codes("",         9968)),
            Map.entry(SUPRAVENTRICULAR_TACHYCARDIA,         new Codes("6456007",  9504)),
            Map.entry(SLOW_SUPRAVENTRICULAR_RUN,            new Codes("",         9488)),
            Map.entry(VENTRICULAR_COUPLET,                  new Codes("",         9952)),
            Map.entry(VENTRICULAR_BIGEMINY,                 new Codes("",         9920)),
            Map.entry(VENTRICULAR_TRIGEMINY,                new Codes("",         9936)),
            Map.entry(BRADYCARDIA,                          new Codes("",         10432)));
    // spotless:on

    private EpisodeConcept() {}

    static CodeableConcept of(EpisodeKind kind) {
        var concept = new CodeableConcept().setText(display(kind));
        codes(kind).ifPresent(codes -> addTo(concept, codes));
        concept.addCoding(new Coding(Systems.METRIC, code(kind), display(kind)));
        return concept;
    }

    private static void addTo(CodeableConcept concept, Codes codes) {
        if (!codes.snomed().isEmpty()) {
            concept.addCoding(new Coding(Systems.SNOMED_CT, codes.snomed(), null));
        }
        String term = String.valueOf(10 * 65536 + codes.rhythm());
        concept.addCoding(new Coding(Systems.IEEE_11073, term, null));
    }

    private static Optional<Codes> codes(EpisodeKind kind) {
        return Optional.ofNullable(CODES.get(kind));
    }

    /** Of our own system. */
    static String code(EpisodeKind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static String display(EpisodeKind kind) {
        String words = kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}

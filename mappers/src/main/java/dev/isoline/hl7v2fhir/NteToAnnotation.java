package dev.isoline.hl7v2fhir;

import ca.uhn.hl7v2.model.v251.datatype.FT;
import ca.uhn.hl7v2.model.v251.segment.NTE;
import dev.isoline.hl7v2fhir.datatype.StToString;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Annotation;

/**
 * NTE (HL7 v2.5.1 ch. 2.15.10) to Annotation. Rows: NTE[ServiceRequest]. Left out, and why:
 * docs/mappings/nte-to-annotation.md.
 */
public final class NteToAnnotation {

    private NteToAnnotation() {}

    /** Empty when NTE-3 is. Repetitions and {@code \.br\} become line breaks. */
    public static Optional<Annotation> map(NTE nte) {
        String text =
                Arrays.stream(nte.getNte3_Comment())
                        .map(NteToAnnotation::line)
                        .filter(Objects::nonNull)
                        .collect(Collectors.joining("\n"));
        return text.isEmpty() ? Optional.empty() : Optional.of(new Annotation().setText(text));
    }

    private static String line(FT comment) {
        String text = StToString.map(comment);
        return text == null ? null : text.replace("\\.br\\", "\n").strip();
    }
}

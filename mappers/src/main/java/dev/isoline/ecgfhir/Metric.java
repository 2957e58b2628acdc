package dev.isoline.ecgfhir;

import dev.isoline.fhir.Systems;
import java.util.List;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;

/** Something a report states a value of, with its code in the project's own code system. */
public interface Metric {

    /** Of CodeSystem-ambulatory-ecg-metric.json. */
    String code();

    String display();

    /** UCUM; empty when the value is no quantity. */
    String unit();

    /** LOINC codes of the same meaning, the older first; mostly none. */
    default List<String> loinc() {
        return List.of();
    }

    /** LOINC where there is one, then our own; {@code text} names it for a reader. */
    default CodeableConcept concept() {
        var concept = new CodeableConcept().setText(display());
        loinc().forEach(c -> concept.addCoding(new Coding(Systems.LOINC, c, null)));
        concept.addCoding(new Coding(Systems.METRIC, code(), display()));
        return concept;
    }
}

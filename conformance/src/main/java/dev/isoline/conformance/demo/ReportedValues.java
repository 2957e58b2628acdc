package dev.isoline.conformance.demo;

import dev.isoline.conformance.validator.Er7;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Type;

/** The numbers a report states, by the code it states them under. */
record ReportedValues(Map<String, Double> byCode) {

    /** Quantities of Observations and their components. */
    static ReportedValues of(Bundle bundle) {
        var values = new HashMap<String, Double>();
        for (var entry : bundle.getEntry()) {
            if (entry.getResource() instanceof Observation observation) {
                add(values, observation.getCode(), observation.getValue());
                observation
                        .getComponent()
                        .forEach(part -> add(values, part.getCode(), part.getValue()));
            }
        }
        return new ReportedValues(values);
    }

    private static void add(Map<String, Double> values, CodeableConcept code, Type value) {
        number(value).ifPresent(n -> code.getCoding().forEach(c -> values.put(c.getCode(), n)));
    }

    private static Optional<Double> number(Type value) {
        if (value == null) {
            return Optional.empty();
        }
        return switch (value.fhirType()) {
            case "Quantity" -> Optional.of(value.castToQuantity(value).getValue().doubleValue());
            case "integer" -> Optional.of((double) value.castToInteger(value).getValue());
            default -> Optional.empty();
        };
    }

    /** OBX-5 of every numeric OBX by its identifier and alternate identifier (OBX-3.1, 3.4). */
    static ReportedValues of(byte[] oru) {
        var values = new HashMap<String, Double>();
        for (String obx : Er7.of(oru).segments("OBX")) {
            String[] fields = obx.split("\\|", -1);
            if (fields.length > 5 && fields[2].equals("NM") && !fields[5].isEmpty()) {
                List<String> code = List.of(fields[3].split("\\^", -1));
                values.put(code.get(0), Double.valueOf(fields[5]));
                if (code.size() > 3) {
                    values.put(code.get(3), Double.valueOf(fields[5]));
                }
            }
        }
        return new ReportedValues(values);
    }

    Optional<Double> of(Metric metric) {
        return metric.codes().stream().filter(byCode::containsKey).map(byCode::get).findFirst();
    }
}

package dev.isoline.hl7v2fhir;

import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.r4.model.Base;
import org.hl7.fhir.r4.model.DomainResource;
import org.hl7.fhir.r4.model.Property;

/** Everything a mapping result says, as {@code Patient.name.family=Berg}, without positions. */
final class FhirLeaves {

    private final List<String> leaves = new ArrayList<>();

    private FhirLeaves() {}

    static List<String> of(MappedMessage mapped) {
        var leaves = new FhirLeaves();
        for (DomainResource resource : FhirValidation.resources(mapped)) {
            leaves.walk(resource.fhirType(), resource);
        }
        return leaves.leaves;
    }

    private void walk(String path, Base base) {
        if (base.isPrimitive() && base.primitiveValue() != null) {
            leaves.add(path + "=" + base.primitiveValue());
        }
        for (Property property : base.children()) {
            for (Base value : property.getValues()) {
                String name = property.getName();
                String step =
                        name.endsWith("[x]")
                                ? name.replace("[x]", "") + capitalised(value.fhirType())
                                : name;
                walk(path + "." + step, value);
            }
        }
    }

    private static String capitalised(String type) {
        return Character.toUpperCase(type.charAt(0)) + type.substring(1);
    }
}

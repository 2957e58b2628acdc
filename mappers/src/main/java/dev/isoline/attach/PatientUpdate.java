package dev.isoline.attach;

import java.util.List;
import java.util.Set;
import org.hl7.fhir.r4.model.Base;
import org.hl7.fhir.r4.model.Extension;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Property;

/**
 * What is known about a patient after another message told about them. HL7 v2.5.1 ch. 2.5.3: a
 * field that is not there leaves the value alone, {@code ""} deletes it; ch. 2.10.4 (snapshot
 * mode): what repeats is told in full and replaces what was known.
 */
public final class PatientUpdate {

    /** They say which record it is, not what is in it. */
    private static final Set<String> KEPT = Set.of("id", "meta", "text", "identifier", "extension");

    private PatientUpdate() {}

    /**
     * A new Patient under the stored one's id.
     *
     * @param cleared paths the sender deleted, such as {@code Patient.name}; identifiers cannot be,
     *     because the patient is known by them
     */
    public static Patient merge(Patient stored, Patient incoming, Set<String> cleared) {
        Patient merged = stored.copy();
        cleared.forEach(path -> clear(merged, path.replaceFirst("^Patient\\.", "")));
        incoming.children().stream()
                .filter(told -> isTold(told) && !KEPT.contains(told.getName()))
                .forEach(told -> replace(merged, told));
        incoming.getIdentifier().forEach(told -> unite(merged, told));
        incoming.getExtension().forEach(told -> unite(merged, told));
        return merged;
    }

    /** HAPI makes an empty element where one that is absent is only asked for. */
    private static boolean isTold(Property told) {
        return told.getValues().stream().anyMatch(value -> !value.isEmpty());
    }

    private static void replace(Patient merged, Property told) {
        clear(merged, told.getName());
        told.getValues().forEach(value -> merged.setProperty(told.getName(), value));
    }

    private static void clear(Patient merged, String name) {
        Property property =
                merged.children().stream()
                        .filter(p -> p.getName().replace("[x]", "").equals(name.replace("[x]", "")))
                        .filter(p -> !KEPT.contains(p.getName()))
                        .findFirst()
                        .orElse(null);
        if (property != null) {
            List<Base> values = List.copyOf(property.getValues());
            values.forEach(value -> merged.removeChild(property.getName(), value));
        }
    }

    /** One that is known is kept as it is: the message may tell less of it, such as no type. */
    private static void unite(Patient merged, Identifier told) {
        if (merged.getIdentifier().stream().noneMatch(known -> isSame(known, told))) {
            merged.addIdentifier(told.copy());
        }
    }

    static boolean isSame(Identifier one, Identifier other) {
        return one.hasValue()
                && one.getValue().equals(other.getValue())
                && String.valueOf(one.getSystem()).equals(String.valueOf(other.getSystem()));
    }

    private static void unite(Patient merged, Extension told) {
        merged.getExtension().removeIf(known -> known.getUrl().equals(told.getUrl()));
        merged.addExtension(told.copy());
    }
}

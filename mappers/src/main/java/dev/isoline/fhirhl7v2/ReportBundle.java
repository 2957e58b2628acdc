package dev.isoline.fhirhl7v2;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DiagnosticReport;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;

/** The resources of a report bundle by what refers to them: fullUrl or {@code Type/id}. */
final class ReportBundle {

    private final List<Resource> resources = new ArrayList<>();
    private final Map<String, Resource> byReference = new HashMap<>();

    ReportBundle(Bundle bundle) {
        for (var entry : bundle.getEntry()) {
            Resource resource = entry.getResource();
            if (resource != null) {
                resources.add(resource);
                byReference.put(entry.getFullUrl(), resource);
                byReference.put(
                        resource.fhirType() + "/" + resource.getIdElement().getIdPart(), resource);
            }
        }
    }

    /** The only one of its type that is asked for; empty when the bundle holds none. */
    <T extends Resource> Optional<T> first(Class<T> type) {
        return resources.stream().filter(type::isInstance).map(type::cast).findFirst();
    }

    <T extends Resource> Optional<T> find(Reference reference, Class<T> type) {
        return Optional.ofNullable(byReference.get(reference.getReference()))
                .filter(type::isInstance)
                .map(type::cast);
    }

    /** In the order of the report, a panel before its members. */
    List<Observation> observations(DiagnosticReport report) {
        var found = new ArrayList<Observation>();
        report.getResult().forEach(reference -> add(reference, found));
        return found;
    }

    private void add(Reference reference, List<Observation> found) {
        var observation = find(reference, Observation.class);
        if (observation.isPresent() && !found.contains(observation.get())) {
            found.add(observation.get());
            observation.get().getHasMember().forEach(member -> add(member, found));
        }
    }
}

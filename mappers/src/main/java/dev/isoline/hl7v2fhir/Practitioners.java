package dev.isoline.hl7v2fhir;

import ca.uhn.hl7v2.model.v251.datatype.XCN;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.datatype.XcnToPractitioner;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Practitioner;
import org.hl7.fhir.r4.model.Reference;

/** The clinicians an order names, each once. */
public final class Practitioners {

    private final Map<String, Practitioner> byId = new LinkedHashMap<>();
    private final Reading in;

    Practitioners(Reading in) {
        this.in = in;
    }

    /** Reference to the first repetition that names somebody. */
    Optional<Reference> first(XCN[] field, String name) {
        for (XCN xcn : field) {
            Optional<Reference> reference = of(xcn, name);
            if (reference.isPresent()) {
                return reference;
            }
        }
        return Optional.empty();
    }

    Optional<Reference> of(XCN xcn, String name) {
        return XcnToPractitioner.map(xcn, in.at(name)).map(this::add);
    }

    private Reference add(Practitioner practitioner) {
        String id = practitioner.getIdElement().getIdPart();
        Practitioner known = byId.putIfAbsent(id, practitioner);
        if (known != null && !known.hasName()) {
            known.setName(practitioner.getName());
        }
        return new Reference("Practitioner/" + id)
                .setDisplay(
                        practitioner.hasName()
                                ? practitioner.getNameFirstRep().getNameAsSingleString()
                                : null);
    }

    Iterable<Practitioner> all() {
        return byId.values();
    }
}

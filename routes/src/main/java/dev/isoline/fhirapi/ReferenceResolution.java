package dev.isoline.fhirapi;

import dev.isoline.ledger.Tables;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import dev.isoline.resources.References;
import dev.isoline.resources.ResourceStore;
import dev.isoline.resources.SearchCondition;
import dev.isoline.resources.SearchIndex;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.hl7.fhir.r4.model.IdType;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;

/**
 * Turns the references of a request into relative ones that point to something (FHIR R4, 2.3 and
 * 3.1.0.11.2).
 *
 * @param base of this server, as the client called it
 * @param entries relative reference of each entry of the transaction by its fullUrl
 */
record ReferenceResolution(Tables tables, String base, Map<String, String> entries) {

    private static final Set<String> PATIENT_ONLY = Set.of("subject", "beneficiary", "patient");

    /** Rewrites the resource's references in place. */
    void resolve(Resource resource, String path) {
        for (References place : References.of(resource, path)) {
            resolve(place);
        }
    }

    private void resolve(References place) {
        Reference reference = place.reference();
        boolean patient = PATIENT_ONLY.contains(place.element());
        if (reference.hasReference()) {
            String target = target(place, reference.getReference(), patient);
            reference.setReference(target);
        } else if (patient) {
            reference.setReference(patientOf(place, reference.getIdentifier()));
        }
    }

    private String target(References place, String reference, boolean patient) {
        if (reference.startsWith("#") && !patient) {
            return reference;
        }
        if (entries.containsKey(reference)) {
            return checked(place, entries.get(reference), patient);
        }
        if (reference.contains("?") && !reference.contains(":/")) {
            return conditional(place, reference);
        }
        String local =
                reference.startsWith(base + "/")
                        ? reference.substring(base.length() + 1)
                        : reference;
        return elsewhere(local) ? foreign(place, local, patient) : checked(place, local, patient);
    }

    private static boolean elsewhere(String reference) {
        return reference.startsWith("http://") || reference.startsWith("https://");
    }

    /** Another server's practitioner may be named; the patient must be known here. */
    private static String foreign(References place, String reference, boolean patient) {
        if (patient) {
            throw unknown(place);
        }
        return reference;
    }

    private String checked(References place, String reference, boolean patient) {
        var id = new IdType(reference);
        boolean wrongType = patient && !"Patient".equals(id.getResourceType());
        if (wrongType || !(inRequest(reference) || stored(id))) {
            throw unknown(place);
        }
        return reference;
    }

    private boolean inRequest(String reference) {
        return entries.containsValue(reference);
    }

    private boolean stored(IdType id) {
        return id.hasResourceType()
                && id.hasIdPart()
                && ResourceStore.exists(tables, id.getResourceType(), id.getIdPart());
    }

    private String conditional(References place, String reference) {
        int query = reference.indexOf('?');
        String type = reference.substring(0, query);
        var criteria = SearchCondition.parse(type, reference.substring(query + 1));
        var matches = tables.resources().search(type, criteria, 0, 2);
        if (matches.size() != 1) {
            throw unknown(place);
        }
        return type + "/" + matches.get(0).id();
    }

    private String patientOf(References place, Identifier identifier) {
        List<String> ids =
                Optional.of(identifier)
                        .filter(i -> i.hasSystem() && i.hasValue())
                        .map(
                                i ->
                                        tables.resources()
                                                .find(
                                                        "Patient",
                                                        SearchIndex.IDENTIFIER,
                                                        i.getSystem(),
                                                        i.getValue()))
                        .orElse(List.of());
        if (ids.size() != 1) {
            throw unknown(place);
        }
        return "Patient/" + ids.get(0);
    }

    private static ContentError unknown(References place) {
        return new ContentError(
                Problem.error(
                        Problem.Kind.UNKNOWN_KEY,
                        place.path(),
                        "The reference does not lead to exactly one resource on this server or in this request."));
    }
}

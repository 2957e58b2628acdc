package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.annotation.Count;
import ca.uhn.fhir.rest.annotation.Offset;
import ca.uhn.fhir.rest.annotation.OptionalParam;
import ca.uhn.fhir.rest.annotation.Search;
import ca.uhn.fhir.rest.api.server.IBundleProvider;
import ca.uhn.fhir.rest.param.ReferenceAndListParam;
import ca.uhn.fhir.rest.param.TokenAndListParam;
import ca.uhn.fhir.rest.server.IResourceProvider;
import org.hl7.fhir.r4.model.Task;

/** Search for the progress of orders (FHIR R4, 12.15). */
public record TaskSearch(FhirGateway gateway) implements IResourceProvider {

    @Override
    public Class<Task> getResourceType() {
        return Task.class;
    }

    @Search
    public IBundleProvider search(
            @OptionalParam(name = "_id") TokenAndListParam id,
            @OptionalParam(name = "identifier") TokenAndListParam identifier,
            @OptionalParam(name = "status") TokenAndListParam status,
            @OptionalParam(name = "patient") ReferenceAndListParam patient,
            @OptionalParam(name = "focus") ReferenceAndListParam focus,
            @OptionalParam(name = "based-on") ReferenceAndListParam basedOn,
            @Count Integer count,
            @Offset Integer offset) {
        return new StoredSearch<>(gateway, Task.class)
                .by("_id", id)
                .by("identifier", identifier)
                .by("status", status)
                .by("patient", patient)
                .by("focus", focus)
                .by("based-on", basedOn)
                .page(count, offset);
    }
}

package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.annotation.Count;
import ca.uhn.fhir.rest.annotation.Offset;
import ca.uhn.fhir.rest.annotation.OptionalParam;
import ca.uhn.fhir.rest.annotation.Search;
import ca.uhn.fhir.rest.api.server.IBundleProvider;
import ca.uhn.fhir.rest.param.TokenAndListParam;
import ca.uhn.fhir.rest.server.IResourceProvider;
import org.hl7.fhir.r4.model.Resource;

/** Search for resources that patients, orders and reports refer to. */
public record IdentifierSearch<R extends Resource>(Class<R> type, FhirGateway gateway)
        implements IResourceProvider {

    @Override
    public Class<R> getResourceType() {
        return type;
    }

    @Search
    public IBundleProvider search(
            @OptionalParam(name = "_id") TokenAndListParam id,
            @OptionalParam(name = "identifier") TokenAndListParam identifier,
            @Count Integer count,
            @Offset Integer offset) {
        return new StoredSearch<>(gateway, type)
                .by("_id", id)
                .by("identifier", identifier)
                .page(count, offset);
    }
}

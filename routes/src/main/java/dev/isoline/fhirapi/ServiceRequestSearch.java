package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.annotation.Count;
import ca.uhn.fhir.rest.annotation.Offset;
import ca.uhn.fhir.rest.annotation.OptionalParam;
import ca.uhn.fhir.rest.annotation.Search;
import ca.uhn.fhir.rest.api.server.IBundleProvider;
import ca.uhn.fhir.rest.param.ReferenceAndListParam;
import ca.uhn.fhir.rest.param.TokenAndListParam;
import ca.uhn.fhir.rest.server.IResourceProvider;
import org.hl7.fhir.r4.model.ServiceRequest;

/** Search for orders (FHIR R4, 12.14). */
public record ServiceRequestSearch(FhirGateway gateway) implements IResourceProvider {

    @Override
    public Class<ServiceRequest> getResourceType() {
        return ServiceRequest.class;
    }

    @Search
    public IBundleProvider search(
            @OptionalParam(name = "_id") TokenAndListParam id,
            @OptionalParam(name = "identifier") TokenAndListParam identifier,
            @OptionalParam(name = "status") TokenAndListParam status,
            @OptionalParam(name = "subject") ReferenceAndListParam subject,
            @OptionalParam(name = "patient") ReferenceAndListParam patient,
            @Count Integer count,
            @Offset Integer offset) {
        return new StoredSearch<>(gateway, ServiceRequest.class)
                .by("_id", id)
                .by("identifier", identifier)
                .by("status", status)
                .by("subject", subject)
                .by("patient", patient)
                .page(count, offset);
    }
}

package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.annotation.ConditionalUrlParam;
import ca.uhn.fhir.rest.annotation.Create;
import ca.uhn.fhir.rest.annotation.ResourceParam;
import ca.uhn.fhir.rest.api.MethodOutcome;
import ca.uhn.fhir.rest.api.server.RequestDetails;
import ca.uhn.fhir.rest.server.IResourceProvider;
import org.hl7.fhir.r4.model.Resource;

/** Create and conditional create of one type (FHIR R4, 3.1.0.8). */
public record CreateProvider<R extends Resource>(Class<R> type, FhirGateway gateway)
        implements IResourceProvider {

    @Override
    public Class<R> getResourceType() {
        return type;
    }

    @Create
    public MethodOutcome create(
            @ResourceParam R resource, @ConditionalUrlParam String url, RequestDetails request) {
        var entry = WriteEntry.create(resource, Queries.of(url));
        return WrittenToOutcome.map(gateway.write(request, entry));
    }
}

package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.annotation.ConditionalUrlParam;
import ca.uhn.fhir.rest.annotation.IdParam;
import ca.uhn.fhir.rest.annotation.ResourceParam;
import ca.uhn.fhir.rest.annotation.Update;
import ca.uhn.fhir.rest.api.MethodOutcome;
import ca.uhn.fhir.rest.api.server.RequestDetails;
import ca.uhn.fhir.rest.server.IResourceProvider;
import org.hl7.fhir.r4.model.IdType;
import org.hl7.fhir.r4.model.Resource;

/** Update and conditional update of one type (FHIR R4, 3.1.0.4). */
public record UpdateProvider<R extends Resource>(Class<R> type, FhirGateway gateway)
        implements IResourceProvider {

    @Override
    public Class<R> getResourceType() {
        return type;
    }

    /** The version is If-Match's. */
    @Update
    public MethodOutcome update(
            @IdParam IdType id,
            @ResourceParam R resource,
            @ConditionalUrlParam String url,
            RequestDetails request) {
        var entry =
                url == null
                        ? WriteEntry.update(resource, id.getIdPart(), "", id.getVersionIdPart())
                        : WriteEntry.update(resource, "", Queries.of(url), "");
        return WrittenToOutcome.map(gateway.write(request, entry));
    }
}

package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.annotation.Count;
import ca.uhn.fhir.rest.annotation.Offset;
import ca.uhn.fhir.rest.annotation.OptionalParam;
import ca.uhn.fhir.rest.annotation.Search;
import ca.uhn.fhir.rest.api.server.IBundleProvider;
import ca.uhn.fhir.rest.param.ReferenceAndListParam;
import ca.uhn.fhir.rest.param.TokenAndListParam;
import ca.uhn.fhir.rest.server.IResourceProvider;
import org.hl7.fhir.r4.model.Coverage;

/** Search for insurance cover (FHIR R4, 13.1.5). */
public record CoverageSearch(FhirGateway gateway) implements IResourceProvider {

    @Override
    public Class<Coverage> getResourceType() {
        return Coverage.class;
    }

    @Search
    public IBundleProvider search(
            @OptionalParam(name = "_id") TokenAndListParam id,
            @OptionalParam(name = "identifier") TokenAndListParam identifier,
            @OptionalParam(name = "beneficiary") ReferenceAndListParam beneficiary,
            @OptionalParam(name = "patient") ReferenceAndListParam patient,
            @Count Integer count,
            @Offset Integer offset) {
        return new StoredSearch<>(gateway, Coverage.class)
                .by("_id", id)
                .by("identifier", identifier)
                .by("beneficiary", beneficiary)
                .by("patient", patient)
                .page(count, offset);
    }
}

package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.annotation.Count;
import ca.uhn.fhir.rest.annotation.Offset;
import ca.uhn.fhir.rest.annotation.OptionalParam;
import ca.uhn.fhir.rest.annotation.Search;
import ca.uhn.fhir.rest.api.server.IBundleProvider;
import ca.uhn.fhir.rest.param.DateAndListParam;
import ca.uhn.fhir.rest.param.StringAndListParam;
import ca.uhn.fhir.rest.param.TokenAndListParam;
import ca.uhn.fhir.rest.server.IResourceProvider;
import org.hl7.fhir.r4.model.Patient;

/** Search for patients (FHIR R4, 8.1.16). */
public record PatientSearch(FhirGateway gateway) implements IResourceProvider {

    @Override
    public Class<Patient> getResourceType() {
        return Patient.class;
    }

    @Search
    public IBundleProvider search(
            @OptionalParam(name = "_id") TokenAndListParam id,
            @OptionalParam(name = "identifier") TokenAndListParam identifier,
            @OptionalParam(name = "family") StringAndListParam family,
            @OptionalParam(name = "birthdate") DateAndListParam birthdate,
            @Count Integer count,
            @Offset Integer offset) {
        return new StoredSearch<>(gateway, Patient.class)
                .by("_id", id)
                .by("identifier", identifier)
                .by("family", family)
                .by("birthdate", birthdate)
                .page(count, offset);
    }
}

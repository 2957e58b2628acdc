package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.annotation.Count;
import ca.uhn.fhir.rest.annotation.Offset;
import ca.uhn.fhir.rest.annotation.OptionalParam;
import ca.uhn.fhir.rest.annotation.Search;
import ca.uhn.fhir.rest.api.server.IBundleProvider;
import ca.uhn.fhir.rest.param.ReferenceAndListParam;
import ca.uhn.fhir.rest.param.TokenAndListParam;
import ca.uhn.fhir.rest.server.IResourceProvider;
import org.hl7.fhir.r4.model.DiagnosticReport;

/** Search for reports (FHIR R4, 10.3). */
public record DiagnosticReportSearch(FhirGateway gateway) implements IResourceProvider {

    @Override
    public Class<DiagnosticReport> getResourceType() {
        return DiagnosticReport.class;
    }

    @Search
    public IBundleProvider search(
            @OptionalParam(name = "_id") TokenAndListParam id,
            @OptionalParam(name = "identifier") TokenAndListParam identifier,
            @OptionalParam(name = "status") TokenAndListParam status,
            @OptionalParam(name = "code") TokenAndListParam code,
            @OptionalParam(name = "subject") ReferenceAndListParam subject,
            @OptionalParam(name = "patient") ReferenceAndListParam patient,
            @OptionalParam(name = "based-on") ReferenceAndListParam basedOn,
            @Count Integer count,
            @Offset Integer offset) {
        return new StoredSearch<>(gateway, DiagnosticReport.class)
                .by("_id", id)
                .by("identifier", identifier)
                .by("status", status)
                .by("code", code)
                .by("subject", subject)
                .by("patient", patient)
                .by("based-on", basedOn)
                .page(count, offset);
    }
}

package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.server.IResourceProvider;
import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Condition;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.DiagnosticReport;
import org.hl7.fhir.r4.model.DocumentReference;
import org.hl7.fhir.r4.model.Encounter;
import org.hl7.fhir.r4.model.ImagingStudy;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Organization;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Practitioner;
import org.hl7.fhir.r4.model.PractitionerRole;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.RelatedPerson;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Task;

/** Which interactions each type has, alone and as entries of a transaction. */
final class Interactions {

    /** Order, patient and insurance, and what they refer to. */
    private static final List<Class<? extends Resource>> WRITE =
            List.of(
                    ServiceRequest.class,
                    Patient.class,
                    Coverage.class,
                    Organization.class,
                    Practitioner.class,
                    PractitionerRole.class,
                    RelatedPerson.class,
                    Condition.class,
                    Encounter.class,
                    Observation.class);

    /** Made here, or sent by the service that reads the recording. */
    private static final List<Class<? extends Resource>> READ =
            Stream.concat(
                            WRITE.stream(),
                            Stream.of(
                                    Task.class,
                                    DiagnosticReport.class,
                                    Device.class,
                                    ImagingStudy.class,
                                    DocumentReference.class,
                                    Provenance.class))
                    .toList();

    private static final List<Class<? extends Resource>> SEARCH_BY_IDENTIFIER =
            List.of(
                    Organization.class,
                    Practitioner.class,
                    PractitionerRole.class,
                    RelatedPerson.class,
                    Condition.class,
                    Encounter.class,
                    Device.class,
                    ImagingStudy.class,
                    DocumentReference.class);

    private Interactions() {}

    /** Whether it can be created and updated. */
    static boolean write(Resource resource) {
        return WRITE.contains(resource.getClass());
    }

    static List<IResourceProvider> providers(FhirGateway gateway) {
        return Stream.of(
                        READ.stream().map(t -> new ReadProvider<>(t, gateway)),
                        WRITE.stream().map(t -> new CreateProvider<>(t, gateway)),
                        WRITE.stream().map(t -> new UpdateProvider<>(t, gateway)),
                        SEARCH_BY_IDENTIFIER.stream().map(t -> new IdentifierSearch<>(t, gateway)),
                        Stream.of(
                                new PatientSearch(gateway),
                                new CoverageSearch(gateway),
                                new ServiceRequestSearch(gateway),
                                new DiagnosticReportSearch(gateway),
                                new ObservationSearch(gateway),
                                new TaskSearch(gateway)))
                .flatMap(s -> s.map(IResourceProvider.class::cast))
                .toList();
    }
}

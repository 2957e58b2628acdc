package dev.isoline.resources;

import static dev.isoline.resources.SearchParameter.date;
import static dev.isoline.resources.SearchParameter.patient;
import static dev.isoline.resources.SearchParameter.reference;
import static dev.isoline.resources.SearchParameter.string;
import static dev.isoline.resources.SearchParameter.token;

import dev.isoline.attach.MergedPatients;
import dev.isoline.ledger.ResourceTable.Criterion;
import dev.isoline.ledger.ResourceTable.IndexEntry;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Condition;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.DiagnosticReport;
import org.hl7.fhir.r4.model.DocumentReference;
import org.hl7.fhir.r4.model.Encounter;
import org.hl7.fhir.r4.model.HumanName;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.ImagingStudy;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Organization;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Practitioner;
import org.hl7.fhir.r4.model.PractitionerRole;
import org.hl7.fhir.r4.model.RelatedPerson;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Task;

/** What finds a resource: the search parameters of FHIR R4 that Isoline stores an index for. */
public final class SearchIndex {

    /** The parameter by which resources are recognised. */
    public static final String IDENTIFIER = "identifier";

    // spotless:off
    private static final List<SearchParameter<?>> PARAMETERS = List.of(
            token(Patient.class,              "identifier", SearchIndex::own),
            string(Patient.class,             "family",     p -> p.getName().stream().map(HumanName::getFamily)),
            date(Patient.class,               "birthdate",  Patient::getBirthDateElement),
            token(Coverage.class,             "identifier", Coverage::getIdentifier),
            reference(Coverage.class,         "beneficiary", c -> List.of(c.getBeneficiary())),
            patient(Coverage.class,           "beneficiary"),
            token(ServiceRequest.class,       "identifier", ServiceRequest::getIdentifier),
            token(ServiceRequest.class,       "status",     r -> List.of(r.getStatusElement())),
            reference(ServiceRequest.class,   "subject",    r -> List.of(r.getSubject())),
            patient(ServiceRequest.class,     "subject"),
            token(DiagnosticReport.class,     "identifier", DiagnosticReport::getIdentifier),
            token(DiagnosticReport.class,     "status",     r -> List.of(r.getStatusElement())),
            token(DiagnosticReport.class,     "code",       r -> r.getCode().getCoding()),
            reference(DiagnosticReport.class, "subject",    r -> List.of(r.getSubject())),
            patient(DiagnosticReport.class,   "subject"),
            reference(DiagnosticReport.class, "based-on",   DiagnosticReport::getBasedOn),
            token(Observation.class,          "identifier", Observation::getIdentifier),
            token(Observation.class,          "status",     o -> List.of(o.getStatusElement())),
            token(Observation.class,          "code",       o -> o.getCode().getCoding()),
            reference(Observation.class,      "subject",    o -> List.of(o.getSubject())),
            patient(Observation.class,        "subject"),
            reference(Observation.class,      "based-on",   Observation::getBasedOn),
            token(Task.class,                 "identifier", Task::getIdentifier),
            token(Task.class,                 "status",     t -> List.of(t.getStatusElement())),
            reference(Task.class,             "patient",    t -> List.of(t.getFor())),
            reference(Task.class,             "focus",      t -> List.of(t.getFocus())),
            reference(Task.class,             "based-on",   Task::getBasedOn),
            token(Organization.class,         "identifier", Organization::getIdentifier),
            token(Practitioner.class,         "identifier", Practitioner::getIdentifier),
            token(PractitionerRole.class,     "identifier", PractitionerRole::getIdentifier),
            token(RelatedPerson.class,        "identifier", RelatedPerson::getIdentifier),
            token(Condition.class,            "identifier", Condition::getIdentifier),
            token(Encounter.class,            "identifier", Encounter::getIdentifier),
            token(Device.class,               "identifier", Device::getIdentifier),
            token(ImagingStudy.class,         "identifier", ImagingStudy::getIdentifier),
            token(DocumentReference.class,    "identifier", d -> Stream.concat(
                    Stream.of(d.getMasterIdentifier()), d.getIdentifier().stream()).toList()));
    // spotless:on

    private SearchIndex() {}

    /** A patient that was merged has no number any more: its numbers lead to whom it became. */
    private static List<Identifier> own(Patient patient) {
        return MergedPatients.isReplaced(patient) ? List.of() : patient.getIdentifier();
    }

    /** Everything the resource can be found by, but for its id. */
    public static List<IndexEntry> entries(Resource resource) {
        return PARAMETERS.stream()
                .filter(p -> p.type().equals(resource.getClass()))
                .flatMap(p -> p.entries(resource))
                .distinct()
                .toList();
    }

    /** The parameter of this name, when the type has it. */
    static Optional<SearchParameter<?>> parameter(String type, String name) {
        return PARAMETERS.stream()
                .filter(p -> p.type().getSimpleName().equals(type) && p.name().equals(name))
                .findFirst();
    }

    public static boolean has(String type, String name) {
        return name.equals(Criterion.ID) || parameter(type, name).isPresent();
    }

    /** Names of a type's parameters, for a message that says what is supported. */
    public static String names(String type) {
        return Stream.concat(
                        Stream.of(Criterion.ID),
                        PARAMETERS.stream()
                                .filter(p -> p.type().getSimpleName().equals(type))
                                .map(SearchParameter::name))
                .collect(Collectors.joining(", "));
    }
}

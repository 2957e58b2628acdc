package dev.isoline.attach;

import dev.isoline.order.StableId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Condition;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.Coverage.CoverageStatus;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Duration;
import org.hl7.fhir.r4.model.Enumerations.AdministrativeGender;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Organization;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Practitioner;
import org.hl7.fhir.r4.model.PractitionerRole;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.RelatedPerson;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestIntent;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;

/** A complete order of the invented Harrow Bay Clinic, as it stands in the ledger. */
public final class SampleOrder {

    private static final String TYPES = "http://terminology.hl7.org/CodeSystem/v2-0203";

    private final List<Resource> stored = new ArrayList<>();

    public final Patient patient = store(new Patient(), "patient");
    public final Coverage coverage = store(new Coverage(), "coverage");
    public final ServiceRequest order = store(new ServiceRequest(), "order");
    public final Organization insurer = store(new Organization(), "insurer");
    public final RelatedPerson subscriber = store(new RelatedPerson(), "subscriber");
    public final Practitioner clinician = store(new Practitioner(), "clinician");
    public final Organization clinic = store(new Organization(), "clinic");
    public final PractitionerRole role = store(new PractitionerRole(), "role");
    public final Condition reason = store(new Condition(), "reason");
    public final Observation pacemaker = store(new Observation(), "pacemaker");

    public SampleOrder() {
        demographics();
        insurance();
        whoOrdered();
        clinical();
        request();
    }

    public Optional<Resource> resolve(String reference) {
        return stored.stream().filter(r -> to(r).getReference().equals(reference)).findFirst();
    }

    public List<Coverage> coverages() {
        return List.of(coverage);
    }

    private void demographics() {
        patient.addIdentifier(identifier("MR", "urn:oid:2.999.10.1", "700123"));
        patient.addName().setFamily("Ferrow").addGiven("Mina");
        patient.setGender(AdministrativeGender.FEMALE);
        patient.getBirthDateElement().setValueAsString("1961-04-12");
        patient.addAddress().addLine("4 Quay Lane").setCity("Harrow Bay").setPostalCode("00001");
    }

    private void insurance() {
        insurer.setName("Lantern Mutual");
        subscriber.setPatient(to(patient));
        subscriber.addName().setFamily("Ferrow").addGiven("Odo");
        subscriber.addAddress().addLine("4 Quay Lane").setCity("Harrow Bay");
        coverage.setStatus(CoverageStatus.ACTIVE).setSubscriberId("P-55-1").setOrder(1);
        coverage.setSubscriber(to(subscriber)).setBeneficiary(to(patient));
        coverage.setRelationship(
                concept("http://terminology.hl7.org/CodeSystem/subscriber-relationship", "spouse"));
        coverage.addPayor(to(insurer));
        coverage.addClass_()
                .setType(concept("http://terminology.hl7.org/CodeSystem/coverage-class", "group"))
                .setValue("G-9");
    }

    private void whoOrdered() {
        clinician.addIdentifier().setSystem("urn:oid:2.999.10.2").setValue("C042");
        clinician.addName().setFamily("Abara").addGiven("Tomas");
        clinic.setName("Harrow Bay Clinic");
        role.setPractitioner(to(clinician)).setOrganization(to(clinic));
    }

    private void clinical() {
        reason.setSubject(to(patient));
        reason.setCode(concept("http://hl7.org/fhir/sid/icd-10-cm", "R55").setText("Syncope"));
        reason.addCategory(
                concept(
                        "http://terminology.hl7.org/CodeSystem/condition-category",
                        "encounter-diagnosis"));
        reason.setClinicalStatus(
                concept("http://terminology.hl7.org/CodeSystem/condition-clinical", "active"));
        pacemaker.setStatus(ObservationStatus.FINAL).setSubject(to(patient));
        pacemaker.setCode(concept("http://snomed.info/sct", Pacemaker.CODE));
        pacemaker.setValue(concept("http://terminology.hl7.org/CodeSystem/v2-0136", "N"));
    }

    private void request() {
        order.addIdentifier(identifier("PLAC", "urn:oid:2.999.10.3", "HB-2001"));
        order.addIdentifier(
                identifier("FILL", "https://isoline.example/fhir/filler-order-number", "IL-1"));
        order.addIdentifier(
                identifier("ACSN", "https://isoline.example/fhir/accession-number", "IL1"));
        order.setStatus(ServiceRequestStatus.ACTIVE).setIntent(ServiceRequestIntent.ORDER);
        order.setCode(
                concept("http://snomed.info/sct", "427047002").setText("Ambulatory ECG, 14 days"));
        order.setSubject(to(patient)).setRequester(to(role));
        order.setAuthoredOnElement(new DateTimeType("2026-11-02T09:30:00+00:00"));
        Duration fortnight = new Duration();
        fortnight.setValue(14).setSystem("http://unitsofmeasure.org").setCode("d").setUnit("d");
        order.getOccurrenceTiming().getRepeat().setBounds(fortnight);
        order.addInsurance(to(coverage)).addReasonReference(to(reason));
        order.addSupportingInfo(to(pacemaker));
    }

    public static Reference to(Resource resource) {
        return new Reference(resource.fhirType() + "/" + resource.getIdElement().getIdPart());
    }

    private <R extends Resource> R store(R resource, String what) {
        resource.setId(StableId.of("sample", what));
        stored.add(resource);
        return resource;
    }

    private static Identifier identifier(String type, String system, String value) {
        return new Identifier().setType(concept(TYPES, type)).setSystem(system).setValue(value);
    }

    private static CodeableConcept concept(String system, String code) {
        return new CodeableConcept(new Coding(system, code, null));
    }
}

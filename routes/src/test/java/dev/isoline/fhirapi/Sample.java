package dev.isoline.fhirapi;

import java.util.Date;
import java.util.concurrent.atomic.AtomicInteger;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.DateType;
import org.hl7.fhir.r4.model.Enumerations.AdministrativeGender;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Organization;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;

/** Invented patients and orders, each with numbers of its own. */
final class Sample {

    static final String MRN = "urn:oid:2.999.10.1";
    static final String ORDERS = "urn:oid:2.999.10.3";

    private static final String TYPES = "http://terminology.hl7.org/CodeSystem/v2-0203";
    private static final AtomicInteger NEXT = new AtomicInteger(1000);

    private Sample() {}

    static String number() {
        return "N" + NEXT.incrementAndGet();
    }

    static Patient patient(String number) {
        var patient = new Patient();
        patient.addIdentifier(identifier("MR", MRN, number));
        patient.addName().setFamily("Sørensen-" + number).addGiven("Åse");
        patient.setBirthDateElement(new DateType("1951-03-09"));
        patient.setGender(AdministrativeGender.FEMALE);
        return patient;
    }

    static ServiceRequest order(String number, String patient) {
        var order = new ServiceRequest();
        order.addIdentifier(identifier("PLAC", ORDERS, number));
        order.setStatus(ServiceRequest.ServiceRequestStatus.ACTIVE);
        order.setIntent(ServiceRequest.ServiceRequestIntent.ORDER);
        order.getCode().addCoding().setSystem("http://snomed.info/sct").setCode("427047002");
        order.setSubject(new Reference(patient));
        order.setAuthoredOn(new Date());
        return order;
    }

    static Coverage coverage(String patient, String payor) {
        var coverage = new Coverage();
        coverage.setStatus(Coverage.CoverageStatus.ACTIVE);
        coverage.setBeneficiary(new Reference(patient));
        coverage.addPayor(new Reference(payor));
        coverage.setSubscriberId("P-1");
        return coverage;
    }

    /** Patient by conditional update, payor, coverage and order, as a clinic would send them. */
    static Bundle transaction(String number) {
        var bundle = new Bundle().setType(Bundle.BundleType.TRANSACTION);
        String query = "Patient?identifier=" + MRN + "|" + number;
        add(bundle, "urn:uuid:" + uuid(1), patient(number), HTTPVerb.PUT, query);
        var insurer = new Organization().setName("Tern Street Mutual");
        add(bundle, "urn:uuid:" + uuid(2), insurer, HTTPVerb.POST, "Organization");
        var coverage = coverage("urn:uuid:" + uuid(1), "urn:uuid:" + uuid(2));
        add(bundle, "urn:uuid:" + uuid(3), coverage, HTTPVerb.POST, "Coverage");
        var order = order(number, "urn:uuid:" + uuid(1));
        order.addInsurance(new Reference("urn:uuid:" + uuid(3)));
        add(bundle, "urn:uuid:" + uuid(4), order, HTTPVerb.POST, "ServiceRequest");
        return bundle;
    }

    static void add(Bundle bundle, String fullUrl, Resource resource, HTTPVerb method, String url) {
        bundle.addEntry()
                .setFullUrl(fullUrl)
                .setResource(resource)
                .getRequest()
                .setMethod(method)
                .setUrl(url);
    }

    static String uuid(int n) {
        return "5f0b2f60-0000-4000-8000-%012d".formatted(n);
    }

    private static Identifier identifier(String type, String system, String value) {
        var concept = new CodeableConcept();
        concept.addCoding().setSystem(TYPES).setCode(type);
        return new Identifier().setType(concept).setSystem(system).setValue(value);
    }
}

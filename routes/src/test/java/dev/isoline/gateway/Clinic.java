package dev.isoline.gateway;

import java.util.concurrent.atomic.AtomicInteger;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.DateType;
import org.hl7.fhir.r4.model.Duration;
import org.hl7.fhir.r4.model.Enumerations.AdministrativeGender;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Organization;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Practitioner;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Timing;

/**
 * One invented patient of Harrow Bay Clinic and one order, told in HL7 v2 or in FHIR.
 *
 * @param mrn medical record number
 * @param placer placer order number
 */
record Clinic(String mrn, String placer) {

    static final String MRN_SYSTEM = "urn:oid:2.999.10.1";
    static final String ORDER_SYSTEM = "urn:oid:2.999.10.2";

    static final String TYPES = "http://terminology.hl7.org/CodeSystem/v2-0203";
    private static final AtomicInteger NEXT = new AtomicInteger(1000);

    static Clinic patient() {
        int number = NEXT.incrementAndGet();
        return new Clinic("QMR" + number, "QPL" + number);
    }

    Clinic anotherOrder() {
        return new Clinic(mrn, "QPL" + NEXT.incrementAndGet());
    }

    // HL7 v2

    /** A complete order. */
    String order() {
        return order("NW");
    }

    String order(String control) {
        return header("OMG^O19^OMG_O19") + pid() + in1() + orc(control, placer) + details(placer);
    }

    String orderWithoutInsurance() {
        return header("OMG^O19^OMG_O19") + pid() + orc("NW", placer) + details(placer);
    }

    String orders(String first, String second) {
        return header("OMG^O19^OMG_O19")
                + pid()
                + in1()
                + orc("NW", first)
                + details(first)
                + orc("NW", second)
                + details(second);
    }

    String adt() {
        return header("ADT^A08^ADT_A01") + "EVN|A08|20261103101500\r" + pid() + in1();
    }

    String adtWithoutInsurance() {
        return header("ADT^A08^ADT_A01") + "EVN|A08|20261103101500\r" + pid();
    }

    /** Another patient turns out to be this one. */
    String merge(Clinic prior) {
        return header("ADT^A40^ADT_A39")
                + "EVN|A40|20261103101500\r"
                + pid()
                + "MRG|"
                + prior.mrn
                + "^^^HARROWBAY^MR\r";
    }

    static String header(String type) {
        return "MSH|^~\\&|HBEHR|HARROWBAY|ISOLINE|TERNSTREET|20261103101500||"
                + type
                + "|HB"
                + NEXT.incrementAndGet()
                + "|P|2.5.1||||||UNICODE UTF-8\r";
    }

    private String pid() {
        return "PID|1||"
                + mrn
                + "^^^HARROWBAY^MR||Quillfeather^Ottoline^^^^^L||19590713|F|||17 Marrow Lane^^Harrow"
                + " Bay^^1000-205^PT^H\r";
    }

    private String in1() {
        return "IN1|1|GOLD^Gold Plan|PM01|Plover Mutual|||^WPN^PH^^351^21^5550200|GRP-77||||20260101"
                + "|20271231||PPO|Quillfeather^Ottoline|SEL|19590713|17 Marrow Lane^^Harrow Bay^^1000-205^PT"
                + "|||||||||||||||||QPOL"
                + mrn.substring(3)
                + "\r";
    }

    private static String orc(String control, String placer) {
        return "ORC|"
                + control
                + "|"
                + placer
                + "^HBEHR|||SC||||20261103101000|||1001^Okafor^Chidi^^^Dr\r";
    }

    private static String details(String placer) {
        return "TQ1|1|||||14^d|20261104090000||R\rOBR|1|"
                + placer
                + "^HBEHR||54^Ambulatory ECG^L\r"
                + "OBX|1|CWE|441509002^Cardiac pacemaker in situ^SCT||N^^HL70136||||||F\r";
    }

    // FHIR

    Patient person() {
        var patient = new Patient();
        patient.addIdentifier(identifier("MR", MRN_SYSTEM, mrn));
        patient.addName().setFamily("Quillfeather").addGiven("Ottoline");
        patient.setBirthDateElement(new DateType("1959-07-13"));
        patient.setGender(AdministrativeGender.FEMALE);
        patient.addAddress().addLine("17 Marrow Lane").setCity("Harrow Bay");
        return patient;
    }

    /** A complete order; the patient by conditional create, as one who may be known. */
    Bundle bundle() {
        var bundle = withoutInsurance();
        var coverage = coverage(uuid(1), uuid(3));
        add(bundle, uuid(3), new Organization().setName("Plover Mutual"), "");
        add(bundle, uuid(5), coverage, "");
        return bundle;
    }

    Bundle withoutInsurance() {
        return withoutInsurance(person());
    }

    Bundle withoutInsurance(Patient person) {
        var bundle = new Bundle().setType(Bundle.BundleType.TRANSACTION);
        add(bundle, uuid(1), person, "identifier=" + MRN_SYSTEM + "|" + mrn);
        var clinician = new Practitioner();
        clinician.addName().setFamily("Okafor");
        add(bundle, uuid(2), clinician, "");
        add(bundle, uuid(4), pacemaker(), "");
        add(bundle, uuid(6), request(), "");
        return bundle;
    }

    /** Insurance of the patient, insured in her own right. */
    Coverage coverage(String patient, String payor) {
        var coverage = new Coverage();
        coverage.setStatus(Coverage.CoverageStatus.ACTIVE);
        coverage.setBeneficiary(new Reference(patient)).setSubscriber(new Reference(patient));
        coverage.setSubscriberId("QPOL" + mrn.substring(3)).addPayor(new Reference(payor));
        coverage.setRelationship(
                coded("http://terminology.hl7.org/CodeSystem/subscriber-relationship", "self"));
        coverage.addClass_()
                .setType(coded("http://terminology.hl7.org/CodeSystem/coverage-class", "group"))
                .setValue("GRP-77");
        return coverage;
    }

    private ServiceRequest request() {
        var order = request(uuid(1));
        order.setRequester(new Reference(uuid(2)));
        order.addSupportingInfo(new Reference(uuid(4)));
        var fourteenDays = new Duration();
        fourteenDays.setValue(14).setUnit("d").setSystem("http://unitsofmeasure.org").setCode("d");
        var timing = new Timing();
        timing.getRepeat().setBounds(fourteenDays);
        return order.setOccurrence(timing);
    }

    /** An order that refers to nothing but its patient. */
    ServiceRequest request(String patient) {
        var order = new ServiceRequest();
        order.addIdentifier(identifier("PLAC", ORDER_SYSTEM, placer));
        order.setStatus(ServiceRequest.ServiceRequestStatus.ACTIVE);
        order.setIntent(ServiceRequest.ServiceRequestIntent.ORDER);
        order.setCode(coded("http://snomed.info/sct", "427047002"));
        return order.setSubject(new Reference(patient));
    }

    private static Observation pacemaker() {
        var observation = new Observation();
        observation.setStatus(Observation.ObservationStatus.FINAL);
        observation.setCode(coded("http://snomed.info/sct", "441509002"));
        observation.setSubject(new Reference(uuid(1)));
        observation.setEffective(new DateTimeType("2026-11-03T10:00:00Z"));
        observation.setValue(coded("http://terminology.hl7.org/CodeSystem/v2-0136", "N"));
        return observation;
    }

    private static CodeableConcept coded(String system, String code) {
        var concept = new CodeableConcept();
        concept.addCoding().setSystem(system).setCode(code);
        return concept;
    }

    private static Identifier identifier(String type, String system, String value) {
        return new Identifier().setType(coded(TYPES, type)).setSystem(system).setValue(value);
    }

    private static void add(Bundle bundle, String fullUrl, Resource resource, String ifNoneExist) {
        var request = bundle.addEntry().setFullUrl(fullUrl).setResource(resource).getRequest();
        request.setMethod(HTTPVerb.POST).setUrl(resource.fhirType());
        if (!ifNoneExist.isEmpty()) {
            request.setIfNoneExist(ifNoneExist);
        }
    }

    private static String uuid(int n) {
        return "urn:uuid:5f0b2f60-0000-4000-8000-%012d".formatted(n);
    }
}

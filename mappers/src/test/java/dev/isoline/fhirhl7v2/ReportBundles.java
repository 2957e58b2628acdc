package dev.isoline.fhirhl7v2;

import dev.isoline.fhir.Systems;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Map;
import org.hl7.fhir.r4.model.Attachment;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.DateType;
import org.hl7.fhir.r4.model.DiagnosticReport;
import org.hl7.fhir.r4.model.DiagnosticReport.DiagnosticReportStatus;
import org.hl7.fhir.r4.model.Enumerations.AdministrativeGender;
import org.hl7.fhir.r4.model.HumanName.NameUse;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.InstantType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Practitioner;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.SampledData;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.StringType;

/** An invented result of Harrow Bay Clinic's order P-77, with every kind of value. */
final class ReportBundles {

    static final MessageContext CONTEXT =
            new MessageContext(
                    "R1",
                    Instant.parse("2026-12-01T10:15:00Z"),
                    "ISOLINE",
                    "MONITORING",
                    "HBEHR",
                    "HARROWBAY",
                    Map.of("HARROWBAY", "urn:oid:2.999.10.1"));

    private ReportBundles() {}

    static Bundle preliminary() {
        return of(DiagnosticReportStatus.PRELIMINARY, ObservationStatus.PRELIMINARY);
    }

    static Bundle of(DiagnosticReportStatus status, ObservationStatus observations) {
        var bundle = new Bundle();
        var rate = rate(observations);
        var pauses = pauses(observations);
        add(bundle, order());
        add(bundle, patient());
        add(bundle, requester());
        add(bundle, report(status));
        add(bundle, rate);
        add(bundle, pauses);
        return bundle;
    }

    private static void add(Bundle bundle, org.hl7.fhir.r4.model.Resource resource) {
        resource.setId(resource.fhirType() + "-" + bundle.getEntry().size());
        bundle.addEntry()
                .setFullUrl("urn:uuid:" + resource.getIdElement().getIdPart())
                .setResource(resource);
    }

    static ServiceRequest order() {
        var order = new ServiceRequest();
        order.addIdentifier(number("PLAC", "urn:oid:2.999.10.1", "P-77"));
        order.addIdentifier(
                number("FILL", "https://isoline.example/fhir/filler-order-number", "F-900"));
        order.setCode(loinc("18754-2", "Ambulatory cardiac rhythm monitor (Holter) study"));
        order.setRequester(new Reference("urn:uuid:Practitioner-2"));
        return order;
    }

    static Patient patient() {
        var patient = new Patient();
        patient.addIdentifier(number("MR", "urn:oid:2.999.10.1", "4711"));
        patient.addIdentifier(
                number("PI", "https://isoline.example/fhir/authority/NORTH%20WARD", "9"));
        patient.addName()
                .setUse(NameUse.OFFICIAL)
                .setFamily("Berg & Sønn|^~\\")
                .addGiven("Anna")
                .addGiven("Maria");
        patient.setBirthDateElement(new DateType("1961-04"));
        patient.setGender(AdministrativeGender.FEMALE);
        return patient;
    }

    private static Practitioner requester() {
        var practitioner = new Practitioner();
        practitioner.addIdentifier(number("NPI", "http://hl7.org/fhir/sid/us-npi", "1234567893"));
        practitioner.addName().setFamily("Hill").addGiven("Robert");
        return practitioner;
    }

    private static DiagnosticReport report(DiagnosticReportStatus status) {
        var report = new DiagnosticReport();
        report.setStatus(status);
        report.setCode(loinc("18754-2", "Ambulatory cardiac rhythm monitor (Holter) study"));
        report.setEffective(period());
        report.setIssuedElement(new InstantType("2026-12-01T10:15:00.125Z"));
        report.setConclusion("Sinus rhythm.\nOne pause | 2.3 s.");
        report.addResult(new Reference("urn:uuid:Observation-4"));
        report.addResult(new Reference("Observation/Observation-5"));
        report.addPresentedForm(
                new Attachment()
                        .setContentType("application/pdf")
                        .setData("%PDF-1.4".getBytes(StandardCharsets.US_ASCII)));
        return report;
    }

    private static Observation rate(ObservationStatus status) {
        var rate = observation(status, metric("heart-rate", "Heart rate"));
        rate.addComponent()
                .setCode(loinc("41924-2", "Heart rate 24 hour mean"))
                .setValue(perMinute("71.5"));
        rate.addComponent()
                .setCode(loinc("8883-1", "Heart rate 24 hour minimum"))
                .setDataAbsentReason(
                        new CodeableConcept(
                                new Coding(
                                        "http://terminology.hl7.org/CodeSystem/data-absent-reason",
                                        "unknown",
                                        "Unknown")));
        rate.addComponent().setCode(metric("strip", "Strip")).setValue(new SampledData());
        return rate;
    }

    private static Observation pauses(ObservationStatus status) {
        var pauses = observation(status, metric("pause-count", "Pauses"));
        pauses.setValue(
                new Quantity()
                        .setValue(0)
                        .setSystem("http://unitsofmeasure.org")
                        .setCode("{count}"));
        pauses.addComponent()
                .setCode(metric("rhythm", "Rhythm"))
                .setValue(
                        new CodeableConcept(
                                new Coding(
                                        "http://snomed.info/sct",
                                        "49436004",
                                        "Atrial fibrillation")));
        pauses.addComponent()
                .setCode(metric("remark", "Remark"))
                .setValue(new StringType("5^2\nand more"));
        pauses.addNote().setText("Threshold 2.0 s");
        return pauses;
    }

    private static Observation observation(ObservationStatus status, CodeableConcept code) {
        var observation = new Observation();
        observation.setStatus(status).setCode(code).setEffective(period());
        return observation;
    }

    private static Quantity perMinute(String value) {
        return new Quantity()
                .setValue(new BigDecimal(value))
                .setUnit("/min")
                .setSystem("http://unitsofmeasure.org")
                .setCode("/min");
    }

    private static Period period() {
        return new Period()
                .setStartElement(new DateTimeType("2026-11-10T09:00:00+01:00"))
                .setEndElement(new DateTimeType("2026-11-24T09:00:00+01:00"));
    }

    private static Identifier number(String type, String system, String value) {
        return new Identifier()
                .setType(new CodeableConcept(new Coding(Systems.IDENTIFIER_TYPE, type, null)))
                .setSystem(system)
                .setValue(value);
    }

    private static CodeableConcept loinc(String code, String display) {
        return new CodeableConcept(new Coding("http://loinc.org", code, display));
    }

    private static CodeableConcept metric(String code, String display) {
        return new CodeableConcept(new Coding(Systems.METRIC, code, display));
    }
}

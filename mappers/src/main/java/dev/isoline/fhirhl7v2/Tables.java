package dev.isoline.fhirhl7v2;

import static java.util.Map.entry;

import java.util.Map;
import org.hl7.fhir.r4.model.DiagnosticReport.DiagnosticReportStatus;
import org.hl7.fhir.r4.model.Enumerations.AdministrativeGender;
import org.hl7.fhir.r4.model.HumanName.NameUse;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;

/** HL7 v2.5.1 codes for FHIR R4 ones. What a table does not list is not valued. */
final class Tables {

    /** ORC-5 (table 0038) and OBR-25 (table 0123) of a report. */
    record ReportStatus(String order, String result) {}

    // spotless:off
    private static final Map<DiagnosticReportStatus, ReportStatus> REPORT = Map.of(
            DiagnosticReportStatus.REGISTERED,     new ReportStatus("IP", "I"),
            DiagnosticReportStatus.PARTIAL,        new ReportStatus("A",  "A"),
            DiagnosticReportStatus.PRELIMINARY,    new ReportStatus("A",  "P"),
            DiagnosticReportStatus.FINAL,          new ReportStatus("CM", "F"),
            DiagnosticReportStatus.AMENDED,        new ReportStatus("CM", "C"),
            DiagnosticReportStatus.CORRECTED,      new ReportStatus("CM", "C"),
            DiagnosticReportStatus.APPENDED,       new ReportStatus("CM", "C"),
            DiagnosticReportStatus.CANCELLED,      new ReportStatus("CA", "X"),
            DiagnosticReportStatus.ENTEREDINERROR, new ReportStatus("",   "C"));

    /** OBX-11, table 0085. */
    private static final Map<ObservationStatus, String> OBSERVATION = Map.of(
            ObservationStatus.REGISTERED,     "I",
            ObservationStatus.PRELIMINARY,    "P",
            ObservationStatus.FINAL,          "F",
            ObservationStatus.AMENDED,        "C",
            ObservationStatus.CORRECTED,      "C",
            ObservationStatus.CANCELLED,      "X",
            ObservationStatus.ENTEREDINERROR, "W");

    /** Table 0396; 99ISOLINE and L are local. */
    private static final Map<String, String> CODING_SYSTEM = Map.ofEntries(
            entry("http://loinc.org",                        "LN"),
            entry("http://snomed.info/sct",                  "SCT"),
            entry("http://unitsofmeasure.org",               "UCUM"),
            entry("http://hl7.org/fhir/sid/icd-10-cm",       "I10C"),
            entry("http://hl7.org/fhir/sid/icd-10",          "I10"),
            entry("http://www.ama-assn.org/go/cpt",          "C4"),
            entry("urn:iso:std:iso:11073:10101",             "MDC"),
            entry("http://dicom.nema.org/resources/ontology/DCM", "DCM"));

    /** PID-8, table 0001. */
    private static final Map<AdministrativeGender, String> SEX = Map.of(
            AdministrativeGender.FEMALE,  "F",
            AdministrativeGender.MALE,    "M",
            AdministrativeGender.OTHER,   "O",
            AdministrativeGender.UNKNOWN, "U");

    /** XPN-7, table 0200. */
    private static final Map<NameUse, String> NAME_TYPE = Map.of(
            NameUse.OFFICIAL,  "L",
            NameUse.USUAL,     "D",
            NameUse.MAIDEN,    "M",
            NameUse.NICKNAME,  "N",
            NameUse.ANONYMOUS, "S");
    // spotless:on

    private Tables() {}

    static ReportStatus report(DiagnosticReportStatus status) {
        return REPORT.getOrDefault(status, new ReportStatus("", ""));
    }

    /** Preliminary when the status is unknown: nothing is final that does not say so. */
    static String observation(ObservationStatus status) {
        return status == null ? "P" : OBSERVATION.getOrDefault(status, "P");
    }

    static String codingSystem(String system) {
        if (system == null) {
            return "";
        }
        return system.startsWith("https://isoline.example/")
                ? "99ISOLINE"
                : CODING_SYSTEM.getOrDefault(system, "L");
    }

    static String sex(AdministrativeGender gender) {
        return gender == null ? "" : SEX.getOrDefault(gender, "");
    }

    static String nameType(NameUse use) {
        return use == null ? "" : NAME_TYPE.getOrDefault(use, "");
    }
}

package dev.isoline.order;

/**
 * Where an order stands, and how each standard says so. Status words: FHIR R4 request-status,
 * task-status and diagnostic-report-status; HL7 v2.5.1 tables 0119 (ORC-1, as the filler sends it),
 * 0038 (ORC-5) and 0123 (OBR-25). Printed in docs/flows/order-states.md.
 */
public enum OrderState {
    // spotless:off
    //                 ServiceRequest      Task                businessStatus        ORC-1 ORC-5 OBR-25 DiagnosticReport
    /** Stored, not yet judged. */
    RECEIVED          ("active",           "received",         "received",           "",   "",   "",  "",                 "it is not yet judged"),
    /** Something required is missing or contradicts what is known. */
    ON_HOLD           ("on-hold",          "on-hold",          "incomplete",         "OH", "HD", "",  "",                 "it is on hold"),
    /** Complete. */
    ACCEPTED          ("active",           "accepted",         "accepted",           "OK", "",   "",  "",                 "it is accepted but not yet scheduled"),
    /** Offered to the recorder station. */
    READY             ("active",           "ready",            "scheduled",          "SC", "SC", "S", "registered",       "it is scheduled"),
    /** The recorder is on the patient. */
    RECORDING         ("active",           "in-progress",      "recording",          "SC", "IP", "I", "registered",       "the recorder is on the patient"),
    /** The recording is in and being analysed. */
    RECORDING_RECEIVED("active",           "in-progress",      "analysis",           "SC", "IP", "I", "registered",       "the recording is in"),
    /** A preliminary result is out and waits for a clinician. */
    REVIEW            ("active",           "in-progress",      "review",             "RE", "A",  "P", "preliminary",      "a preliminary result is out"),
    /** The final result is out. */
    COMPLETED         ("completed",        "completed",        "reported",           "RE", "CM", "F", "final",            "the final result is out"),
    REJECTED          ("revoked",          "rejected",         "rejected",           "UA", "",   "",  "",                 "it was rejected"),
    CANCELLED         ("revoked",          "cancelled",        "cancelled",          "CR", "CA", "X", "cancelled",        "it is cancelled"),
    /** The recording cannot be used; the order waits for another one. */
    FAILED            ("active",           "failed",           "recording-unusable", "SC", "SC", "S", "registered",       "the recording cannot be used"),
    /** Should never have been placed; observations sent for it carry W in OBX-11. */
    ENTERED_IN_ERROR  ("entered-in-error", "entered-in-error", "entered-in-error",   "SC", "ER", "C", "entered-in-error", "it was entered in error");
    // spotless:on

    private final String serviceRequestStatus;
    private final String taskStatus;
    private final String businessStatus;
    private final String orderControl;
    private final String orderStatus;
    private final String resultStatus;
    private final String reportStatus;
    private final String words;

    OrderState(
            String serviceRequestStatus,
            String taskStatus,
            String businessStatus,
            String orderControl,
            String orderStatus,
            String resultStatus,
            String reportStatus,
            String words) {
        this.serviceRequestStatus = serviceRequestStatus;
        this.taskStatus = taskStatus;
        this.businessStatus = businessStatus;
        this.orderControl = orderControl;
        this.orderStatus = orderStatus;
        this.resultStatus = resultStatus;
        this.reportStatus = reportStatus;
        this.words = words;
    }

    /** Code of http://hl7.org/fhir/request-status. */
    public String serviceRequestStatus() {
        return serviceRequestStatus;
    }

    /** Code of http://hl7.org/fhir/task-status. */
    public String taskStatus() {
        return taskStatus;
    }

    /** Code of https://isoline.example/fhir/CodeSystem/order-business-status. */
    public String businessStatus() {
        return businessStatus;
    }

    /** ORC-1, HL7 table 0119, of what the gateway sends; empty when nothing is owed. */
    public String orderControl() {
        return orderControl;
    }

    /** ORC-5, HL7 table 0038; empty when not valued. */
    public String orderStatus() {
        return orderStatus;
    }

    /** OBR-25, HL7 table 0123; empty before there is anything to report on. */
    public String resultStatus() {
        return resultStatus;
    }

    /** Code of http://hl7.org/fhir/diagnostic-report-status; empty before there is a report. */
    public String reportStatus() {
        return reportStatus;
    }

    /** The state as the second half of a sentence about the order. */
    public String words() {
        return words;
    }
}

package dev.isoline.order;

/**
 * What an order must bring before anyone can act on it, where it stands in HL7 v2.5.1 and in FHIR
 * R4, and what its sender is told when it is missing. The names are used in the configuration.
 */
public enum Requirement {
    // spotless:off
    PATIENT_NAME           ("PID-5",  "Patient.name",                     "The patient has no family name."),
    MEDICAL_RECORD_NUMBER  ("PID-3",  "Patient.identifier",               "The patient has no medical record number with its assigning authority."),
    BIRTH_DATE             ("PID-7",  "Patient.birthDate",                "The patient has no birth date."),
    SEX                    ("PID-8",  "Patient.gender",                   "The patient has no administrative sex."),
    INSURER_NAME           ("IN1-4",  "Coverage.payor",                   "The insurance has no company name."),
    GROUP_NUMBER           ("IN1-8",  "Coverage.class",                   "The insurance has no group number."),
    POLICY_NUMBER          ("IN1-36", "Coverage.subscriberId",            "The insurance has no policy number."),
    SUBSCRIBER_NAME        ("IN1-16", "Coverage.subscriber",              "The insurance does not name the subscriber."),
    SUBSCRIBER_RELATIONSHIP("IN1-17", "Coverage.relationship",            "The insurance does not say how the patient is related to the subscriber."),
    SUBSCRIBER_ADDRESS     ("IN1-19", "Coverage.subscriber",              "The insurance has no address of the subscriber."),
    ORDERING_CLINICIAN     ("ORC-12", "ServiceRequest.requester",         "The order does not name the ordering clinician."),
    STUDY                  ("OBR-4",  "ServiceRequest.code",              "The order does not say which study is asked for."),
    DURATION               ("TQ1-6",  "ServiceRequest.occurrence",        "The order does not say how long to record."),
    PACEMAKER              ("OBX-5",  "ServiceRequest.supportingInfo",    "The order does not say whether the patient has a pacemaker (yes, no or unknown).");
    // spotless:on

    private final String field;
    private final String path;
    private final String text;

    Requirement(String field, String path, String text) {
        this.field = field;
        this.path = path;
        this.text = text;
    }

    /** Its place in the words of the sender's protocol. */
    public String location(Vocabulary vocabulary) {
        return vocabulary == Vocabulary.HL7_V2 ? field : path;
    }

    /** One sentence that says what is missing. */
    public String text() {
        return text;
    }
}

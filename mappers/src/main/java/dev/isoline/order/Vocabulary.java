package dev.isoline.order;

/** In whose words a {@link Problem} names its place. */
public enum Vocabulary {
    /** Segment and field: {@code PID-7}. */
    HL7_V2,
    /** FHIRPath: {@code Patient.birthDate}. */
    FHIR
}

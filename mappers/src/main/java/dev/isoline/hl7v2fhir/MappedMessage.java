package dev.isoline.hl7v2fhir;

import java.util.List;

/**
 * One HL7 v2 message in FHIR words.
 *
 * @param patient what it tells about the patient
 * @param orders its orders in message order; empty for ADT
 * @param notes what could not be carried
 */
public record MappedMessage(PatientRecord patient, List<ClinicalOrder> orders, List<Note> notes) {}

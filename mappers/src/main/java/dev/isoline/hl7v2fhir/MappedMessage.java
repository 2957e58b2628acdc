package dev.isoline.hl7v2fhir;

import java.util.List;
import org.hl7.fhir.r4.model.Identifier;

/**
 * One HL7 v2 message in FHIR words.
 *
 * @param patient what it tells about the patient
 * @param orders its orders in message order; empty for ADT
 * @param subsumed identifiers merged into those of the patient (MRG-1); empty but for ADT^A40
 * @param notes what could not be carried
 */
public record MappedMessage(
        PatientRecord patient,
        List<ClinicalOrder> orders,
        List<Identifier> subsumed,
        List<Note> notes) {}

package dev.isoline.fhirhl7v2;

import java.time.Instant;
import java.util.Map;

/**
 * What a message to a partner needs beside its content.
 *
 * @param controlId MSH-10
 * @param at MSH-7
 * @param sendingApplication MSH-3
 * @param sendingFacility MSH-4
 * @param receivingApplication MSH-5
 * @param receivingFacility MSH-6
 * @param authorities identifier system of each assigning authority by its namespace id, as the
 *     partner writes it (CX-4.1, EI-2)
 */
public record MessageContext(
        String controlId,
        Instant at,
        String sendingApplication,
        String sendingFacility,
        String receivingApplication,
        String receivingFacility,
        Map<String, String> authorities) {}

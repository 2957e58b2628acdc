package dev.isoline.intake;

import java.time.Instant;

/**
 * Where something came from.
 *
 * @param channel {@code mllp}, {@code fhir} or {@code recording}
 * @param sender name of the configured sender
 * @param messageId row of the stored message
 * @param at when it was received
 */
public record Source(String channel, String sender, long messageId, Instant at) {}

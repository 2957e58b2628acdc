package dev.isoline.hl7v2fhir;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;

/**
 * What the mapping of one message needs to know beside the message.
 *
 * @param sender configured name of the sending system
 * @param defaultAuthority system of patient identifiers that come without an assigning authority;
 *     empty: they are refused
 * @param authorities system of each assigning authority by its namespace id (CX-4.1)
 * @param zone of times without an offset
 * @param received when the message came in
 */
public record MappingContext(
        String sender,
        String defaultAuthority,
        Map<String, String> authorities,
        ZoneId zone,
        Instant received) {}

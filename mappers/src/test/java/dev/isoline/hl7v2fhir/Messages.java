package dev.isoline.hl7v2fhir;

import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.HapiContext;
import ca.uhn.hl7v2.model.Message;
import ca.uhn.hl7v2.parser.CanonicalModelClassFactory;
import ca.uhn.hl7v2.validation.impl.ValidationContextFactory;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;

/**
 * Reads test messages the way the gateway does: into HAPI's v2.5.1 model, without its validation.
 */
final class Messages {

    static final MappingContext HARROW_BAY =
            new MappingContext(
                    "harrow-bay",
                    "urn:oid:2.999.10.1",
                    Map.of("HARROWBAY", "urn:oid:2.999.10.1"),
                    ZoneId.of("Europe/Lisbon"),
                    Instant.parse("2026-11-03T09:15:00Z"));

    private static final HapiContext HAPI = context();

    private Messages() {}

    private static HapiContext context() {
        var context = new DefaultHapiContext(new CanonicalModelClassFactory("2.5.1"));
        context.setValidationContext(ValidationContextFactory.noValidation());
        return context;
    }

    /** Segments may end in any line break. */
    static Message parse(String text) {
        try {
            return HAPI.getPipeParser().parse(text.strip().replaceAll("\\r\\n|\\n", "\r") + "\r");
        } catch (HL7Exception e) {
            throw new IllegalArgumentException(e);
        }
    }

    static MappedMessage map(String text) {
        return MessageToFhir.map(parse(text), HARROW_BAY);
    }
}

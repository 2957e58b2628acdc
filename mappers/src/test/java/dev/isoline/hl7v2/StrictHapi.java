package dev.isoline.hl7v2;

import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.model.Message;
import ca.uhn.hl7v2.util.Terser;
import ca.uhn.hl7v2.validation.impl.ValidationContextFactory;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * The judge: HAPI HL7v2 2.6.0 with its default validation and the structures of the message's own
 * version, which are generated from the HL7 database.
 */
public final class StrictHapi {

    private StrictHapi() {}

    /** The message as HAPI reads it; fails the test when HAPI finds it invalid. */
    public static Terser terser(byte[] message) {
        return terser(message, StandardCharsets.UTF_8);
    }

    static Terser terser(byte[] message, Charset charset) {
        return new Terser(message(new String(message, charset)));
    }

    private static Message message(String text) {
        try (var context = new DefaultHapiContext()) {
            context.setValidationContext(ValidationContextFactory.defaultValidation());
            return context.getPipeParser().parse(text);
        } catch (HL7Exception e) {
            throw new AssertionError(
                    "HAPI refuses it: " + e.getMessage() + "\n" + text.replace('\r', '\n'), e);
        }
    }
}

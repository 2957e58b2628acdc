package dev.isoline.conformance.validator;

import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.HapiContext;
import ca.uhn.hl7v2.model.GenericMessage;
import ca.uhn.hl7v2.model.Message;
import ca.uhn.hl7v2.validation.impl.ValidationContextFactory;
import java.util.ArrayList;

/**
 * HAPI HL7v2's parser with its default validation, on the model of the message's own version; then
 * the segments and fields that model marks as required.
 */
public final class Hl7v2Judge {

    private static final String NAME = "HAPI HL7v2 parser";

    private final HapiContext context = new DefaultHapiContext();

    public Hl7v2Judge() {
        context.setValidationContext(ValidationContextFactory.defaultValidation());
    }

    /**
     * @param raw one message without MLLP framing
     */
    public Verdict judge(String file, byte[] raw) {
        var findings = new ArrayList<Finding>();
        try {
            Message message = context.getPipeParser().parse(Er7.of(raw).text());
            if (message instanceof GenericMessage) {
                findings.add(
                        Finding.error(
                                "MSH-9", "no such message structure in " + message.getVersion()));
            } else {
                findings.addAll(RequiredParts.missing(message));
            }
        } catch (HL7Exception e) {
            findings.add(Finding.error(place(e), e.getMessage()));
        }
        return Verdict.of(file, NAME, findings);
    }

    private static String place(HL7Exception e) {
        return e.getLocation() == null ? "" : e.getLocation().toString();
    }
}

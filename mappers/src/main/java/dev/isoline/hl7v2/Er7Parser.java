package dev.isoline.hl7v2;

import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.HapiContext;
import ca.uhn.hl7v2.parser.CanonicalModelClassFactory;
import ca.uhn.hl7v2.parser.PipeParser;
import ca.uhn.hl7v2.validation.impl.ValidationContextFactory;

/** HAPI's parser as the gateway wants it: v2.5.1 model, nothing refused, our escapes. */
final class Er7Parser {

    /** Holds no state between messages; making one loads classes and takes half a second. */
    static final PipeParser SHARED = parser();

    private Er7Parser() {}

    private static PipeParser parser() {
        HapiContext context = new DefaultHapiContext();
        context.setModelClassFactory(new CanonicalModelClassFactory("2.5.1"));
        context.setValidationContext(ValidationContextFactory.noValidation());
        context.getParserConfiguration().setEscaping(new Er7Escaping());
        context.getParserConfiguration().setDefaultObx2Type("ST");
        context.getParserConfiguration().setInvalidObx2Type("ST");
        return context.getPipeParser();
    }
}

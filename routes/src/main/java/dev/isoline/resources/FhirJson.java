package dev.isoline.resources;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.IParser;
import ca.uhn.fhir.parser.LenientErrorHandler;
import org.hl7.fhir.r4.model.Resource;

/** Resources as the JSON they are stored and sent in (FHIR R4, 2.6.2). */
public final class FhirJson {

    /** One per process: building it takes seconds. */
    public static final FhirContext CONTEXT = quiet(FhirContext.forR4Cached());

    private FhirJson() {}

    public static String encode(Resource resource) {
        return parser().encodeResourceToString(resource);
    }

    public static Resource decode(String json) {
        return (Resource) parser().parseResource(json);
    }

    private static IParser parser() {
        return CONTEXT.newJsonParser();
    }

    /** HAPI logs the values it cannot read; the validator names their path instead. */
    private static FhirContext quiet(FhirContext context) {
        context.setParserErrorHandler(new LenientErrorHandler(false));
        return context;
    }
}

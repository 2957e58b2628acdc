package dev.isoline.conformance.validator;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.context.support.IValidationSupport.IssueSeverity;
import ca.uhn.fhir.validation.FhirValidator;
import ca.uhn.fhir.validation.ResultSeverityEnum;
import ca.uhn.fhir.validation.SingleValidationMessage;
import java.util.List;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.UnknownCodeSystemWarningValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;

/**
 * HAPI FHIR's instance validator for R4 (4.0.1). It costs seconds to warm up: one per process, one
 * resource at a time.
 */
public final class FhirJudge {

    private static final String NAME = "HAPI FHIR R4 validator";

    private static final FhirContext R4 = FhirContext.forR4Cached();

    private static final FhirJudge ONE = new FhirJudge();

    private final FhirValidator validator;

    private FhirJudge() {
        var instance = new FhirInstanceValidator(support());
        instance.setAnyExtensionsAllowed(true);
        instance.setErrorForUnknownProfiles(true);
        validator = R4.newValidator().registerValidatorModule(instance);
    }

    /**
     * SNOMED CT, LOINC and systems of our own are not in the published R4 packages, so a code of
     * them is a warning; a code outside a required binding of R4 itself is still an error.
     */
    private static ValidationSupportChain support() {
        var unknownSystems = new UnknownCodeSystemWarningValidationSupport(R4);
        unknownSystems.setNonExistentCodeSystemSeverity(IssueSeverity.WARNING);
        return new ValidationSupportChain(
                new DefaultProfileValidationSupport(R4),
                new CommonCodeSystemsTerminologyService(R4),
                new InMemoryTerminologyServerValidationSupport(R4),
                unknownSystems);
    }

    public static FhirJudge one() {
        return ONE;
    }

    /**
     * @param json one resource
     */
    public synchronized Verdict judge(String file, String json) {
        try {
            List<SingleValidationMessage> messages =
                    validator.validateWithResult(json).getMessages();
            return Verdict.of(
                    file,
                    NAME,
                    messages.stream().filter(FhirNoise::isSignal).map(FhirJudge::finding).toList());
        } catch (RuntimeException e) { // of several kinds, some of them its JSON library's
            return Verdict.of(
                    file, NAME, List.of(Finding.error("", "unreadable: " + e.getMessage())));
        }
    }

    private static Finding finding(SingleValidationMessage message) {
        String place = String.valueOf(message.getLocationString());
        boolean error = message.getSeverity().compareTo(ResultSeverityEnum.ERROR) >= 0;
        return error
                ? Finding.error(place, message.getMessage())
                : Finding.warning(place, message.getMessage());
    }
}

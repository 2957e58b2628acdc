package dev.isoline.fhir;

import static org.assertj.core.api.Assertions.assertThat;

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
import org.hl7.fhir.r4.model.Resource;

/** HAPI FHIR's instance validator for R4 (4.0.1), one per test run. */
public final class ReferenceValidator {

    private static final FhirContext R4 = FhirContext.forR4Cached();

    private static final FhirValidator VALIDATOR = validator();

    private ReferenceValidator() {}

    /** Codes of LOINC, SNOMED CT, DICOM and our own are not in the R4 packages: warnings. */
    public static void assertValid(Resource resource) {
        assertThat(errors(resource)).isEmpty();
    }

    /** Each error with its place; empty when the resource is valid. */
    public static List<String> errors(Resource resource) {
        return VALIDATOR.validateWithResult(resource).getMessages().stream()
                .filter(m -> m.getSeverity().compareTo(ResultSeverityEnum.ERROR) >= 0)
                .map(ReferenceValidator::text)
                .toList();
    }

    private static String text(SingleValidationMessage message) {
        return message.getLocationString() + ": " + message.getMessage();
    }

    private static FhirValidator validator() {
        var unknownSystems = new UnknownCodeSystemWarningValidationSupport(R4);
        unknownSystems.setNonExistentCodeSystemSeverity(IssueSeverity.WARNING);
        var instance =
                new FhirInstanceValidator(
                        new ValidationSupportChain(
                                new DefaultProfileValidationSupport(R4),
                                new CommonCodeSystemsTerminologyService(R4),
                                new InMemoryTerminologyServerValidationSupport(R4),
                                unknownSystems));
        return R4.newValidator().registerValidatorModule(instance);
    }
}

package dev.isoline.hl7v2fhir;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.validation.FhirValidator;
import ca.uhn.fhir.validation.ResultSeverityEnum;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.UnknownCodeSystemWarningValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.DomainResource;

/** HAPI's R4 instance validator, one for the test JVM; code systems nobody ships are tolerated. */
final class FhirValidation {

    static final FhirContext R4 = FhirContext.forR4Cached();

    private static final FhirValidator VALIDATOR = validator();

    private FhirValidation() {}

    private static FhirValidator validator() {
        var unknown = new UnknownCodeSystemWarningValidationSupport(R4);
        unknown.setNonExistentCodeSystemSeverity(
                ca.uhn.fhir.context.support.IValidationSupport.IssueSeverity.WARNING);
        var chain =
                new ValidationSupportChain(
                        new DefaultProfileValidationSupport(R4),
                        new CommonCodeSystemsTerminologyService(R4),
                        new InMemoryTerminologyServerValidationSupport(R4),
                        unknown);
        return R4.newValidator().registerValidatorModule(new FhirInstanceValidator(chain));
    }

    /** Errors of a bundle of everything mapped; empty when it is valid. */
    static List<String> errors(MappedMessage mapped) {
        return VALIDATOR.validateWithResult(bundle(mapped)).getMessages().stream()
                .filter(m -> m.getSeverity().compareTo(ResultSeverityEnum.ERROR) >= 0)
                .map(m -> m.getLocationString() + ": " + m.getMessage())
                .toList();
    }

    static Bundle bundle(MappedMessage mapped) {
        var bundle = new Bundle().setType(BundleType.COLLECTION);
        for (DomainResource resource : resources(mapped)) {
            bundle.addEntry()
                    .setFullUrl(
                            "https://isoline.example/fhir/"
                                    + resource.fhirType()
                                    + "/"
                                    + resource.getIdElement().getIdPart())
                    .setResource(resource);
        }
        return bundle;
    }

    /** Everything mapped, each resource once, in a fixed order. */
    static List<DomainResource> resources(MappedMessage mapped) {
        Map<String, DomainResource> all = new LinkedHashMap<>();
        List<DomainResource> list = new ArrayList<>();
        list.add(mapped.patient().patient());
        list.addAll(mapped.patient().coverages());
        list.addAll(mapped.patient().related());
        for (ClinicalOrder order : mapped.orders()) {
            list.add(order.serviceRequest());
            list.addAll(order.related());
        }
        list.forEach(r -> all.putIfAbsent(r.fhirType() + "/" + r.getIdElement().getIdPart(), r));
        return List.copyOf(all.values());
    }
}

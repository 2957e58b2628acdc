package dev.isoline.fhirapi;

import ca.uhn.fhir.context.support.IValidationSupport;
import ca.uhn.fhir.parser.DataFormatException;
import ca.uhn.fhir.validation.FhirValidator;
import ca.uhn.fhir.validation.ResultSeverityEnum;
import ca.uhn.fhir.validation.SingleValidationMessage;
import com.google.gson.JsonParseException;
import dev.isoline.fhirapi.definitions.DefinitionsOnDemand;
import dev.isoline.fhirapi.definitions.PublishedDefinitions;
import dev.isoline.resources.FhirJson;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.UnknownCodeSystemWarningValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.OperationOutcome.IssueSeverity;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r5.utils.validation.constants.BestPracticeWarningLevel;

/**
 * The R4 base profiles, their invariants and required bindings, checked by HAPI's instance
 * validator. One for the process: it is slow to build and slow on its first resource.
 */
public final class FhirValidation {

    private final FhirValidator validator;

    /** The validator of the process, which warms from the first time somebody asks for it. */
    public static FhirValidation ofProcess() {
        return OfProcess.VALIDATION;
    }

    FhirValidation() {
        this(onDemand());
    }

    FhirValidation(FhirInstanceValidator instance) {
        instance.setBestPracticeWarningLevel(BestPracticeWarningLevel.Ignore);
        instance.setAnyExtensionsAllowed(true);
        instance.setErrorForUnknownProfiles(false);
        instance.setNoExtensibleWarnings(true);
        validator = FhirJson.CONTEXT.newValidator().registerValidatorModule(instance);
    }

    /**
     * Judges a resource or a whole Bundle as it came.
     *
     * @param body JSON or XML
     * @return one issue per fault with its FHIRPath, free of the values in the body; no issue when
     *     there is no fault
     */
    public OperationOutcome faults(String body) {
        var quoted = Scrub.of(body);
        var outcome = new OperationOutcome();
        for (SingleValidationMessage message : messages(body)) {
            if (message.getSeverity().ordinal() >= ResultSeverityEnum.ERROR.ordinal()) {
                issue(outcome, message, quoted);
            }
        }
        return outcome;
    }

    /** Depending on where a body breaks off, the validator says so or fails. */
    private List<SingleValidationMessage> messages(String body) {
        if (body.isBlank()) {
            return unreadable("The body is empty.");
        }
        try {
            return validator.validateWithResult(body).getMessages();
        } catch (JsonParseException | DataFormatException e) {
            return unreadable("The body is not well-formed JSON or XML.");
        }
    }

    private static List<SingleValidationMessage> unreadable(String text) {
        var message = new SingleValidationMessage();
        message.setSeverity(ResultSeverityEnum.FATAL);
        message.setMessage(text);
        return List.of(message);
    }

    private static void issue(
            OperationOutcome outcome, SingleValidationMessage message, Scrub scrub) {
        boolean fatal = message.getSeverity() == ResultSeverityEnum.FATAL;
        var issue =
                outcome.addIssue()
                        .setSeverity(fatal ? IssueSeverity.FATAL : IssueSeverity.ERROR)
                        .setCode(fatal ? IssueType.STRUCTURE : type(message.getMessageId()))
                        .setDiagnostics(scrub.text(message.getMessage()));
        if (message.getLocationString() != null) {
            issue.addExpression(path(message.getLocationString()));
        }
    }

    /** The validator marks the type of a bundled resource by a comment that FHIRPath allows. */
    private static String path(String location) {
        return location.replaceAll("/\\*.*?\\*/", "");
    }

    private static IssueType type(String messageId) {
        String id = messageId == null ? "" : messageId.toLowerCase(Locale.ROOT);
        if (id.contains("terminology")) {
            return IssueType.CODEINVALID;
        }
        if (id.contains("minimum")) {
            return IssueType.REQUIRED;
        }
        if (id.contains("maximum") || id.contains("unknown") || id.contains("unrecognised")) {
            return IssueType.STRUCTURE;
        }
        return Set.of("dom-", "inv", "constraint").stream().anyMatch(id::contains)
                ? IssueType.INVARIANT
                : IssueType.VALUE;
    }

    private static FhirInstanceValidator onDemand() {
        var published = new PublishedDefinitions();
        var chain = chain(published);
        var instance = new FhirInstanceValidator(chain);
        instance.setWrappedWorkerContext(chain, new DefinitionsOnDemand(chain, published));
        return instance;
    }

    static ValidationSupportChain chain(IValidationSupport definitions) {
        var context = FhirJson.CONTEXT;
        var unknownSystems = new UnknownCodeSystemWarningValidationSupport(context);
        unknownSystems.setNonExistentCodeSystemSeverity(IValidationSupport.IssueSeverity.WARNING);
        return new ValidationSupportChain(
                definitions,
                new CommonCodeSystemsTerminologyService(context),
                new InMemoryTerminologyServerValidationSupport(context),
                unknownSystems);
    }

    /**
     * @return completed when the validator of the process has judged one of everything an order
     *     brings; with the faults found: none, unless the program is put together wrongly
     */
    public static CompletableFuture<OperationOutcome> warming() {
        return OfProcess.WARMING;
    }

    private static final class OfProcess {

        static final FhirValidation VALIDATION = new FhirValidation();
        static final CompletableFuture<OperationOutcome> WARMING =
                CompletableFuture.supplyAsync(VALIDATION::warmUp);
    }

    /**
     * Validates one of everything an order brings, so that the first sender need not wait.
     *
     * @return the faults found: none, unless the program is put together wrongly
     */
    OperationOutcome warmUp() {
        try (var sample = FhirValidation.class.getResourceAsStream("warm-up.json")) {
            return faults(new String(sample.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

package dev.isoline.conformance.demo;

import dev.isoline.conformance.partner.FhirPartner.Received;
import dev.isoline.conformance.validator.Er7;
import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;

/** The result of a recording arrives at its clinic, in HL7 v2 and as FHIR. */
final class Results {

    private static final Duration PATIENCE = Duration.ofSeconds(60);

    private final Stage stage;
    private final Story story;

    Results(Stage stage, Story story) {
        this.stage = stage;
        this.story = story;
    }

    void await(Clinic clinic, DemoRecording recording) throws IOException, InterruptedException {
        String place = clinic.folder() + "/" + clinic.order() + "/";
        Optional<Received> bundle = clinic.fhir().inbox().await(Results::isReport, PATIENCE);
        Optional<byte[]> oru = clinic.mllp().inbox().await(Results::isResult, PATIENCE);
        story.expect(bundle.isPresent(), "no FHIR report came for %s", clinic.order());
        story.expect(oru.isPresent(), "no ORU^R01 with results came for %s", clinic.order());
        if (bundle.isPresent()) {
            stage.folder().write(place + "report-bundle.json", bundle.get().json());
            compare(recording, (Bundle) bundle.get().resource());
        }
        if (oru.isPresent()) {
            stage.folder().write(place + "oru.hl7", oru.get());
            new ResultComparison(story)
                    .compare(recording, place + "oru.hl7", ReportedValues.of(oru.get()));
        }
    }

    private void compare(DemoRecording recording, Bundle bundle) {
        var values = ReportedValues.of(bundle);
        var comparison = new ResultComparison(story);
        story.tell("The result of %s arrives at its clinic:", recording.order());
        comparison.tell(recording, values);
        comparison.compare(recording, "the FHIR report of " + recording.order(), values);
    }

    static boolean isReport(Received received) {
        return received.resource() instanceof Bundle bundle
                && Forwarding.types(bundle).contains("DiagnosticReport");
    }

    static boolean isResult(byte[] message) {
        Er7 er7 = Er7.of(message);
        return er7.field("MSH", 9).startsWith("ORU^R01") && !er7.segments("OBX").isEmpty();
    }
}

package dev.isoline.conformance.demo;

import dev.isoline.conformance.partner.FhirPartner;
import dev.isoline.conformance.partner.FhirPartner.Received;
import java.io.IOException;
import java.util.function.Predicate;

/** Everything else the partners were sent, written down in the order it came. */
final class Deliveries {

    private final Stage stage;
    private final Story story;

    Deliveries(Stage stage, Story story) {
        this.stage = stage;
        this.story = story;
    }

    void write() throws IOException {
        write(stage.ternStreet(), "tern-street/order-forwarded-", Forwarding::isOrder);
        write(stage.ternStreet(), "tern-street/status-", r -> !Forwarding.isOrder(r));
        for (Clinic clinic : new Clinic[] {stage.harrowBay(), stage.sablePoint()}) {
            int fhir =
                    write(clinic.fhir(), clinic.folder() + "/status-", r -> !Results.isReport(r));
            int v2 = writeHl7v2(clinic);
            story.tell(
                    "%s was told where its order stands: %d times by HL7 v2, %d times by FHIR.",
                    clinic.order(), v2, fhir);
            story.expect(fhir > 0, "no FHIR status came for %s", clinic.order());
            story.expect(v2 > 0, "no HL7 v2 status came for %s", clinic.order());
        }
    }

    private int write(FhirPartner partner, String prefix, Predicate<Received> wanted)
            throws IOException {
        int n = 0;
        for (Received received : partner.inbox().all()) {
            if (wanted.test(received)) {
                stage.folder().write(prefix + ++n + ".json", received.json());
            }
        }
        return n;
    }

    private int writeHl7v2(Clinic clinic) throws IOException {
        int n = 0;
        for (byte[] message : clinic.mllp().inbox().all()) {
            if (!Results.isResult(message)) {
                stage.folder().write(clinic.folder() + "/status-" + ++n + ".hl7", message);
            }
        }
        return n;
    }
}

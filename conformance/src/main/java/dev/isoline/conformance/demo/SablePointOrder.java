package dev.isoline.conformance.demo;

import dev.isoline.conformance.partner.FhirClinic;
import dev.isoline.conformance.partner.Reply;
import java.io.IOException;

/** Sable Point Clinic orders by FHIR, complete at once. */
final class SablePointOrder {

    private final Stage stage;
    private final Story story;
    private final FhirClinic clinic;

    SablePointOrder(Stage stage, Story story, Credentials credentials) throws DemoFailure {
        this.stage = stage;
        this.story = story;
        this.clinic =
                new FhirClinic(stage.httpBase(), "sable-point", credentials.of("sable-point"));
    }

    void order() throws IOException, InterruptedException, DemoFailure {
        String bundle = Templates.text("sable-point-order.json");
        stage.folder().write("sable-point/01-order-bundle.json", bundle);
        Reply reply = clinic.transaction(bundle);
        stage.folder().write("sable-point/01-order-response.json", reply.body());
        story.tell(
                "Sable Point Clinic posts an order (FHIR transaction). The gateway answers HTTP %d.",
                reply.status());
        if (reply.status() != 200) {
            throw new DemoFailure(
                    "The FHIR order was refused; see sable-point/01-order-response.json.");
        }
        new Forwarding(stage, story).await("SP-2002");
    }
}

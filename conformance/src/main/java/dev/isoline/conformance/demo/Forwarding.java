package dev.isoline.conformance.demo;

import dev.isoline.conformance.partner.FhirPartner.Received;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Bundle;

/** What Tern Street Monitoring is sent of an order: all it needs to act, in one transaction. */
final class Forwarding {

    private static final Duration PATIENCE = Duration.ofSeconds(30);

    /** Issue "The round trip", point 6; the pacemaker answer is an Observation. */
    private static final List<String> PARTS =
            List.of(
                    "ServiceRequest",
                    "Patient",
                    "Coverage",
                    "Organization",
                    "Practitioner",
                    "Observation",
                    "Task");

    private final Stage stage;
    private final Story story;

    Forwarding(Stage stage, Story story) {
        this.stage = stage;
        this.story = story;
    }

    void await(String order) throws InterruptedException, DemoFailure {
        Received received =
                stage.ternStreet()
                        .inbox()
                        .await(r -> isOrder(r) && r.json().contains(order), PATIENCE)
                        .orElseThrow(
                                () ->
                                        new DemoFailure(
                                                "Order "
                                                        + order
                                                        + " did not reach Tern Street Monitoring within "
                                                        + PATIENCE.toSeconds()
                                                        + " s."));
        Set<String> types = types((Bundle) received.resource());
        story.tell(
                "Order %s is complete and reaches Tern Street Monitoring (FHIR transaction: %s).",
                order, String.join(", ", types));
        for (String part : PARTS) {
            story.expect(types.contains(part), "order %s was forwarded without %s", order, part);
        }
    }

    static boolean isOrder(Received received) {
        return received.resource() instanceof Bundle bundle
                && types(bundle).contains("ServiceRequest")
                && types(bundle).contains("Patient");
    }

    static Set<String> types(Bundle bundle) {
        return bundle.getEntry().stream()
                .filter(entry -> entry.hasResource())
                .map(entry -> entry.getResource().fhirType())
                .collect(Collectors.toCollection(TreeSet::new));
    }
}

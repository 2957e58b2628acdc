package dev.isoline.conformance.demo;

import dev.isoline.conformance.partner.ClinicMllp;
import dev.isoline.conformance.partner.FhirPartner;
import dev.isoline.conformance.validator.Er7;
import java.io.IOException;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;

/**
 * Harrow Bay Clinic orders by HL7 v2: without insurance first, so the order is held; its ADT brings
 * the insurance and releases it.
 */
final class HarrowBayOrder {

    private static final Duration ANSWER = Duration.ofSeconds(30);

    /** What the order leaves out, by field (HL7 v2.5.1 ch. 6.4.6). */
    private static final List<String> MISSING =
            List.of("IN1-4", "IN1-8", "IN1-36", "IN1-16", "IN1-17", "IN1-19");

    private final Stage stage;
    private final Story story;
    private byte[] firstAnswer;

    HarrowBayOrder(Stage stage, Story story) {
        this.stage = stage;
        this.story = story;
    }

    void order() throws IOException {
        byte[] message = Templates.hl7v2("harrow-bay-order.hl7");
        stage.folder().write("harrow-bay/01-order-in.hl7", message);
        firstAnswer = send(message);
        stage.folder().write("harrow-bay/01-order-ack.hl7", firstAnswer);
        Er7 answer = Er7.of(firstAnswer);
        story.tell(
                "Harrow Bay Clinic sends an order (OMG^O19, MLLP) without insurance."
                        + " The gateway answers %s and names what is missing:",
                answer.field("MSA", 1));
        answer.segments("ERR").forEach(error -> story.add("%s", warning(error)));
        checkFirst(answer);
    }

    private void checkFirst(Er7 answer) {
        story.expect(answer.field("MSA", 1).equals("AA"), "the order is not answered with AA");
        story.expect(
                answer.field("MSA", 2).equals("HB0001"), "MSA-2 is not the order's control id");
        List<String> errors = answer.segments("ERR");
        for (String field : MISSING) {
            story.expect(
                    errors.stream().anyMatch(e -> names(e, field)),
                    "the answer does not name %s as missing",
                    field);
        }
        story.expect(
                forwarded(stage.ternStreet()) == 0,
                "the order was forwarded although it is not complete");
    }

    /** ERR-2 is segment ^ sequence ^ field (HL7 v2.5.1 ch. 2.15.5.2). */
    private static boolean names(String error, String field) {
        List<String> location = Arrays.asList(part(error, 2).split("\\^"));
        return location.size() > 2 && (location.get(0) + "-" + location.get(2)).equals(field);
    }

    private static String warning(String error) {
        String[] at = part(error, 2).split("\\^");
        String place = at.length > 2 ? at[0] + "-" + at[2] : "";
        return place + " " + part(error, 8);
    }

    private static String part(String segment, int number) {
        String[] parts = segment.split("\\|", -1);
        return number < parts.length ? parts[number] : "";
    }

    void insurance() throws IOException, InterruptedException, DemoFailure {
        byte[] message = Templates.hl7v2("harrow-bay-adt.hl7");
        stage.folder().write("harrow-bay/02-adt-in.hl7", message);
        byte[] ack = send(message);
        stage.folder().write("harrow-bay/02-adt-ack.hl7", ack);
        String code = Er7.of(ack).field("MSA", 1);
        story.tell(
                "Harrow Bay Clinic sends ADT^A08 with the insurance. The gateway answers %s.",
                code);
        story.expect(code.equals("AA"), "the ADT message is not answered with AA");
        new Forwarding(stage, story).await("HB-1001");
    }

    /** The same message again gets the same answer and changes nothing. */
    void orderAgain() throws IOException, InterruptedException {
        int before = forwarded(stage.ternStreet());
        byte[] again = send(Templates.hl7v2("harrow-bay-order.hl7"));
        stage.folder().write("harrow-bay/03-order-again-ack.hl7", again);
        boolean same = Arrays.equals(firstAnswer, again);
        story.tell(
                "Harrow Bay Clinic sends its first message once more. The answer is %s.",
                same ? "the same, byte for byte" : "another one");
        story.expect(same, "the order sent again got another answer");
        Thread.sleep(1500); // long enough for a delivery, were there one
        story.expect(
                forwarded(stage.ternStreet()) == before,
                "the order sent again was forwarded again");
    }

    private static int forwarded(FhirPartner ternStreet) {
        return (int) ternStreet.inbox().all().stream().filter(Forwarding::isOrder).count();
    }

    private byte[] send(byte[] message) throws IOException {
        try (var clinic = new ClinicMllp(stage.mllpPort(), ANSWER)) {
            return clinic.send(message);
        }
    }
}

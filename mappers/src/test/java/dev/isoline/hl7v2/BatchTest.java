package dev.isoline.hl7v2;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Batches: HL7 v2.5.1 ch. 2.10.3 and 2.15.2; two messages in one frame: common practice, no source.
 */
class BatchTest {

    private static final String A = "MSH|^~\\&|A\rPID|1\r";
    private static final String B = "MSH|^~\\&|B\rPID|MSH\r";

    @Test
    void one_message_is_itself() {
        assertThat(messages(A)).containsExactly(A);
        assertThat(answer(A)).isEqualTo("ack1\r");
    }

    @Test
    void two_messages_in_one_frame_are_two_and_get_two_answers() {
        assertThat(messages(A + B)).containsExactly(A, B);
        assertThat(answer(A + B)).isEqualTo("ack1\rack2\r");
    }

    @Test
    void an_envelope_belongs_to_no_message_and_the_answer_has_one() {
        String batch =
                "FHS|^~\\&\rBHS|^~\\&|HBEHR|HB|GW|M|20261125||||B7\r" + A + B + "BTS|2\rFTS|1\r";
        assertThat(messages(batch)).containsExactly(A, B);
        assertThat(answer(batch))
                .isEqualTo(
                        "BHS|^~\\&|GW|M|HBEHR|HB|20261125083000+0000||||G1|B7\rack1\rack2\rBTS|2\r");
    }

    @Test
    void a_wrong_count_is_flagged_and_loses_nothing() {
        var batch = Batch.of(bytes("BHS|^~\\&\r" + A + B + "BTS|3\r"));
        assertThat(batch.messages()).hasSize(2);
        assertThat(batch.warnings()).extracting("location").containsExactly("BTS-1");
        assertThat(answer("BHS|^~\\&\r" + A + B + "BTS|3\r"))
                .endsWith("BTS|2|BTS-1 does not match the 2 messages of the batch.\r");
    }

    @Test
    void what_stands_before_the_first_msh_is_a_message_of_its_own() {
        assertThat(messages("rest of something\r" + A)).containsExactly("rest of something\r", A);
    }

    @Test
    void other_line_ends_and_a_byte_order_mark_change_nothing() {
        assertThat(messages("\ufeff" + A.replace("\r", "\r\n") + B.replace('\r', '\n'))).hasSize(2);
    }

    private static List<String> messages(String frame) {
        return Batch.of(bytes(frame)).messages().stream()
                .map(m -> new String(m, StandardCharsets.UTF_8))
                .toList();
    }

    private static String answer(String frame) {
        var batch = Batch.of(bytes(frame));
        List<byte[]> acks =
                batch.messages().size() == 1
                        ? List.of(bytes("ack1\r"))
                        : List.of(bytes("ack1\r"), bytes("ack2\r"));
        return new String(batch.answer(acks, "G1", Answers.AT), StandardCharsets.UTF_8);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}

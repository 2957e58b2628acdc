package dev.isoline.delivery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.delivery.Verdict.Outcome;
import dev.isoline.ledger.DeliveryTable.NewDelivery;
import java.io.EOFException;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** HL7 v2.5.1 ch. 2.9: which answers end a delivery, and which ask for another try. */
class MllpDestinationTest {

    private static final String MESSAGE =
            "MSH|^~\\&|ISOLINE|B|A|A|20261125||ORU^R01^ORU_R01|M1|P|2.5.1\rPID|1||1||Mür\r";

    private MllpPartner partner;
    private MllpDestination destination;

    @BeforeEach
    void start() throws Exception {
        partner = new MllpPartner();
        destination = new MllpDestination("127.0.0.1", partner.port(), Duration.ofSeconds(2));
    }

    @AfterEach
    void stop() throws Exception {
        destination.close();
        partner.close();
    }

    @ParameterizedTest
    @CsvSource({
        "AA, DELIVERED",
        "CA, DELIVERED",
        "AE, REFUSED",
        "CE, REFUSED",
        "CR, REFUSED",
        "AR, RETRY",
        "ZZ, RETRY"
    })
    void msa_1_decides(String code, Outcome outcome) throws Exception {
        partner.answers = message -> MllpPartner.answer(code, "M1");
        assertThat(sent().outcome()).isEqualTo(outcome);
    }

    @ParameterizedTest
    @CsvSource({"200, REFUSED", "203, REFUSED", "206, RETRY", "207, RETRY"})
    void a_rejection_is_final_when_the_message_does_not_fit_the_receiver(
            String error, Outcome outcome) throws Exception {
        partner.answers =
                m -> MllpPartner.answer("AR", "M1") + "ERR||MSH^1^9|" + error + "^x^HL70357|E\r";
        assertThat(sent()).isEqualTo(new Verdict(outcome, "AR, ERR-3 " + error + " at MSH-1-9"));
        partner.answers =
                m -> MllpPartner.answer("AR", "M1") + "ERR|MSH^1^9^" + error + "&x&HL70357\r";
        assertThat(sent()).isEqualTo(new Verdict(outcome, "AR, ERR-3 " + error));
    }

    @Test
    void the_error_quotes_no_text_of_the_answer() throws Exception {
        partner.answers =
                m -> MllpPartner.answer("AE", "M1") + "ERR||PID^1^5|102^Moor|E||||Moor, Alda\r";
        assertThat(sent()).isEqualTo(Verdict.refused("AE, ERR-3 102 at PID-1-5"));
    }

    @Test
    void an_answer_to_another_message_counts_for_nothing() throws Exception {
        partner.answers = message -> MllpPartner.answer("AA", "M0");
        assertThat(sent()).isEqualTo(Verdict.retry("an answer to another message"));
        partner.answers = message -> "MSH|^~\\&|B\r";
        assertThat(sent()).isEqualTo(Verdict.retry("an answer without MSA"));
    }

    @Test
    void the_stored_bytes_go_out_over_one_kept_connection() throws Exception {
        for (int i = 0; i < 3; i++) {
            assertThat(sent()).isEqualTo(Verdict.delivered("AA"));
        }
        assertThat(partner.messages).containsExactly(MESSAGE, MESSAGE, MESSAGE);
        assertThat(partner.connections).hasValue(1);
    }

    @Test
    void a_connection_the_partner_gave_up_meanwhile_is_made_anew() throws Exception {
        partner.closesAfterAnswer = true;
        assertThat(sent()).isEqualTo(Verdict.delivered("AA"));
        Thread.sleep(100);
        assertThat(sent()).isEqualTo(Verdict.delivered("AA"));
        assertThat(partner.connections).hasValue(2);
    }

    @Test
    void no_answer_is_a_failure_of_the_connection() {
        partner.answers = message -> "";
        assertThatThrownBy(this::sent).isInstanceOf(EOFException.class);
        partner.answers =
                message -> {
                    pause();
                    return "";
                };
        assertThatThrownBy(this::sent).isInstanceOf(SocketTimeoutException.class);
    }

    private Verdict sent() throws Exception {
        byte[] payload = MESSAGE.getBytes(StandardCharsets.UTF_8);
        return destination.send(
                new NewDelivery(
                        "x", "o", "oru", "x-application/hl7-v2+er7", payload, null, Instant.EPOCH));
    }

    private static void pause() {
        try {
            Thread.sleep(4_000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}

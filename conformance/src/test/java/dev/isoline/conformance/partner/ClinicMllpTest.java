package dev.isoline.conformance.partner;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.conformance.validator.Er7;
import dev.isoline.conformance.validator.Hl7v2Judge;
import dev.isoline.conformance.validator.Verdict;
import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class ClinicMllpTest {

    private MllpListener listener;

    @BeforeEach
    void listen() throws IOException {
        listener = new MllpListener();
    }

    @AfterEach
    void close() throws IOException {
        listener.close();
    }

    @Test
    void every_message_gets_its_own_right_answer_and_is_kept_in_order() throws Exception {
        try (var clinic = new ClinicMllp(port(), Duration.ofSeconds(5))) {
            for (String id : new String[] {"1", "2", "3"}) {
                byte[] ack = clinic.send(message(id));
                // HL7 v2.5.1 ch. 2.9.2: MSA-2 is the control id of the message answered
                assertThat(Er7.of(ack).field("MSA", 2)).isEqualTo(id);
                assertThat(Er7.of(ack).field("MSH", 3)).isEqualTo("CLINICAPP");
                assertThat(new Hl7v2Judge().judge("ack", ack).outcome())
                        .isEqualTo(Verdict.Outcome.PASSED);
            }
        }
        assertThat(listener.inbox().all())
                .containsExactly(message("1"), message("2"), message("3"));
    }

    @Test
    void two_frames_in_one_write_are_two_messages() throws Exception {
        try (var socket = new Socket("127.0.0.1", port())) {
            socket.setSoTimeout(5000);
            var frame = "\u000bMSH|^~\\&|A|B|C|D|||ORU^R01|%s|P|2.5.1\r\u001c\r";
            String both = frame.formatted("1") + "noise" + frame.formatted("2");
            socket.getOutputStream().write(both.getBytes(StandardCharsets.ISO_8859_1));
            assertThat(MllpFrames.read(socket.getInputStream())).isPresent();
            assertThat(MllpFrames.read(socket.getInputStream())).isPresent();
        }
        assertThat(listener.inbox().all()).hasSize(2);
    }

    @Test
    void waiting_for_what_never_comes_ends() throws Exception {
        assertThat(listener.inbox().await(m -> true, Duration.ofMillis(50))).isEmpty();
    }

    private int port() {
        return URI.create(listener.url()).getPort();
    }

    private static byte[] message(String id) {
        String text =
                "MSH|^~\\&|GW|MON|CLINICAPP|CLINIC|20261124230000||ORU^R01^ORU_R01|"
                        + id
                        + "|P|2.5.1\rOBR|1|||18754-2^Holter^LN\r";
        return text.getBytes(StandardCharsets.UTF_8);
    }
}

package dev.isoline.mllp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.EOFException;
import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * The rules of docs/flows/mllp-framing.md over real sockets against a camel-netty route. Block
 * layout: HL7 v2.5.1 implementation guide, appendix C. Where senders break it the wanted outcome is
 * common practice, no source.
 */
class MllpFramingTest {

    private static final String A = "MSH|^~\\&|A\rPID|1\r";
    private static final String B = "MSH|^~\\&|B\rPID|2\r";
    private static final String C = "MSH|^~\\&|C\rPID|3\r";

    private MllpRoute route;
    private Socket socket;

    @BeforeEach
    void start() throws Exception {
        route = new MllpRoute();
        socket = new Socket("127.0.0.1", route.port);
        socket.setSoTimeout(5000);
        socket.setTcpNoDelay(true);
    }

    @AfterEach
    void stop() throws IOException {
        socket.close();
        route.close();
    }

    @Test
    void three_frames_in_one_write_get_three_answers_in_order() throws IOException {
        write(frame(A) + frame(B) + frame(C));
        assertThat(answers(3)).isEqualTo(frame("ack:" + A) + frame("ack:" + B) + frame("ack:" + C));
    }

    @Test
    void one_frame_in_many_reads_is_one_message() throws Exception {
        for (byte b : frame(A).getBytes(StandardCharsets.ISO_8859_1)) {
            socket.getOutputStream().write(b);
            Thread.sleep(2);
        }
        assertThat(answers(1)).isEqualTo(frame("ack:" + A));
    }

    @Test
    void bytes_between_frames_mean_nothing() throws IOException {
        write("noise" + frame(A) + "\r\n\r\n  x" + frame(B));
        assertThat(answers(2)).isEqualTo(frame("ack:" + A) + frame("ack:" + B));
    }

    @Test
    void an_empty_frame_gets_no_answer_and_the_next_is_read() throws IOException {
        write(frame("") + frame(A));
        assertThat(answers(1)).isEqualTo(frame("ack:" + A));
        assertThat(route.received).hasSize(1);
    }

    @Test
    void fs_without_cr_ends_the_frame() throws IOException {
        write("\u000b" + A + "\u001c" + frame(B));
        assertThat(answers(2)).isEqualTo(frame("ack:" + A) + frame("ack:" + B));
    }

    @Test
    void fs_without_cr_is_answered_without_waiting_for_more() throws IOException {
        write("\u000b" + A + "\u001c");
        assertThat(answers(1)).isEqualTo(frame("ack:" + A));
    }

    @Test
    void a_frame_without_vt_is_skipped_and_the_next_is_read() throws IOException {
        write(A + "\u001c\r" + frame(B));
        assertThat(answers(1)).isEqualTo(frame("ack:" + B));
    }

    @Test
    void vt_within_text_stays_in_the_message_and_the_next_is_read() throws IOException {
        write(frame("MSH|^~\\&|A\rPID|Ma\u000bin\r") + frame(B));
        assertThat(answers(2)).endsWith(frame("ack:" + B));
        assertThat(new String(route.received.get(0), StandardCharsets.US_ASCII))
                .contains("Ma\u000bin");
    }

    @Test
    void vt_before_msh_drops_the_frame_that_never_ended() throws IOException {
        write("\u000bMSH|^~\\&|lost\rPI" + frame(B));
        assertThat(answers(1)).isEqualTo(frame("ack:" + B));
        assertThat(route.received).hasSize(1);
    }

    @Test
    void a_frame_that_never_ends_frees_the_socket_and_is_no_message() throws IOException {
        write("\u000b" + A);
        assertThat(socket.getInputStream().read()).isEqualTo(-1);
        assertThat(route.received).isEmpty();
    }

    @Test
    void a_connection_that_closes_within_a_frame_leaves_no_message() throws Exception {
        write("\u000b" + A);
        socket.close();
        try (var client = MllpClient.connect("127.0.0.1", route.port, Duration.ofSeconds(5))) {
            client.send(B.getBytes(StandardCharsets.US_ASCII));
        }
        assertThat(route.received).hasSize(1);
    }

    @Test
    void a_frame_over_the_limit_closes_the_connection() throws IOException {
        write(frame(A));
        assertThat(answers(1)).isEqualTo(frame("ack:" + A));
        write("\u000bMSH" + "x".repeat(MllpRoute.MAX_FRAME_BYTES));
        assertThat(socket.getInputStream().read()).isEqualTo(-1);
        assertThat(route.received).hasSize(1);
    }

    @Test
    void the_client_gets_the_answer_of_each_message_it_sends() throws IOException {
        try (var client = MllpClient.connect("127.0.0.1", route.port, Duration.ofSeconds(5))) {
            for (String message : new String[] {A, B, C}) {
                byte[] answer = client.send(message.getBytes(StandardCharsets.US_ASCII));
                assertThat(new String(answer, StandardCharsets.US_ASCII))
                        .isEqualTo("ack:" + message);
            }
        }
    }

    @Test
    void the_client_says_so_when_the_partner_closes_instead_of_answering() throws IOException {
        try (var client = MllpClient.connect("127.0.0.1", route.port, Duration.ofSeconds(5))) {
            byte[] tooLong =
                    "x".repeat(MllpRoute.MAX_FRAME_BYTES + 1).getBytes(StandardCharsets.US_ASCII);
            assertThatThrownBy(() -> client.send(tooLong)).isInstanceOf(EOFException.class);
        }
    }

    private void write(String text) throws IOException {
        socket.getOutputStream().write(text.getBytes(StandardCharsets.ISO_8859_1));
        socket.getOutputStream().flush();
    }

    /** Reads until as many blocks have ended, or the connection. */
    private String answers(int count) throws IOException {
        var text = new StringBuilder();
        for (int ended = 0, b; ended < count && (b = socket.getInputStream().read()) >= 0; ) {
            text.append((char) b);
            ended += text.toString().endsWith("\u001c\r") ? 1 : 0;
        }
        return text.toString();
    }

    private static String frame(String message) {
        return "\u000b" + message + "\u001c\r";
    }
}

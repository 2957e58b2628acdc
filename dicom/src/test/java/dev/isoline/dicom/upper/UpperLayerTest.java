package dev.isoline.dicom.upper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.dicom.dimse.Loopback;
import dev.isoline.dicom.spi.Abort;
import dev.isoline.dicom.spi.Association;
import dev.isoline.dicom.spi.Listener;
import dev.isoline.dicom.spi.Local;
import dev.isoline.dicom.spi.MaxPdu;
import dev.isoline.dicom.spi.Offer;
import dev.isoline.dicom.spi.Remote;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.Timeouts;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.time.Duration;
import java.util.HexFormat;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** PS3.8 9.2 on the wire: what the other side sees, PDU by PDU. */
@Timeout(30)
class UpperLayerTest {

    private static final String ABORT_OF_USER = "07000000000400000000";
    private static final String UNRECOGNISED = "07000000000400000201";
    private static final String UNEXPECTED = "07000000000400000202";
    private static final String INVALID_PARAMETER = "07000000000400000206";
    private static final String RELEASE_RQ = "05000000000400000000";
    private static final String RELEASE_RP = "06000000000400000000";

    /** A PDV of no bytes in context 1: last fragment of a command. */
    private static final String P_DATA = "040000000006 00000002 01 03";

    private static final String ECHO_RQ =
            "04000000004a 00000046 01 03"
                    + "00000000 04000000 38000000"
                    + "00000200 12000000 312e322e3834302e31303030382e312e3100"
                    + "00000001 02000000 3000"
                    + "00001001 02000000 0700"
                    + "00000008 02000000 0101";

    private static Timeouts timeouts(int artimMillis) {
        return new Timeouts(
                Duration.ofSeconds(5),
                Duration.ofMillis(artimMillis),
                Duration.ofSeconds(5),
                Duration.ofSeconds(5),
                Duration.ofSeconds(5),
                Duration.ofSeconds(5));
    }

    private static String request(String called, String context) {
        return request("0001", called, context);
    }

    private static String request(String version, String called, String context) {
        String body =
                version
                        + "abcd" // reserved, not tested
                        + hex((called + " ".repeat(16)).substring(0, 16))
                        + hex("REC1            ")
                        + "55".repeat(32)
                        + "10ff"
                        + field(context)
                        + "20ff002e 01ffffff 30ff0011"
                        + hex("1.2.840.10008.1.1")
                        + "40ff0011"
                        + hex("1.2.840.10008.1.2")
                        + "50ff0008 51ff0004 00001000";
        int length = body.replace(" ", "").length() / 2;
        return String.format("01ff%08x", length) + body;
    }

    private static String field(String text) {
        return String.format("%04x", text.length()) + hex(text);
    }

    private static String hex(String text) {
        return HexFormat.of().formatHex(text.getBytes(java.nio.charset.StandardCharsets.US_ASCII));
    }

    private static final String GOOD = request("TERN ARCHIVE", Pdu.APPLICATION_CONTEXT);

    @Nested
    class As_acceptor {

        private Listener listener;

        @BeforeEach
        void listen() throws IOException {
            listener = Loopback.ENGINE.listen(local(5000), Services.echoing());
        }

        private Local local(int artim) {
            return Loopback.local().with(timeouts(artim)).with(new MaxPdu(4096, 0));
        }

        @AfterEach
        void close() {
            listener.close();
        }

        private Raw connected() throws IOException {
            return Raw.to(listener.address().getPort());
        }

        private Raw associated() throws IOException {
            Raw raw = connected().send(GOOD);
            assertThat(raw.pdu()).startsWith("0200");
            return raw;
        }

        @Test
        void sta_2_reserved_bytes_are_not_tested() throws IOException {
            try (var raw = associated()) {
                assertThat(raw.send(ECHO_RQ).pdu()).startsWith("0400");
            }
        }

        @Test
        void sta_2_any_other_pdu_is_aborted_as_user() throws IOException {
            for (String pdu :
                    new String[] {P_DATA, RELEASE_RQ, RELEASE_RP, "03000000000400010101"}) {
                try (var raw = connected()) {
                    assertThat(raw.send(pdu).pdu()).isEqualTo(ABORT_OF_USER);
                }
            }
        }

        @Test
        void sta_2_an_invalid_pdu_is_aborted_as_user() throws IOException {
            for (String pdu : new String[] {"474554202f20", "010000000002 0001", "01007fffffff"}) {
                try (var raw = connected()) {
                    assertThat(raw.send(pdu).pdu()).isEqualTo(ABORT_OF_USER);
                }
            }
        }

        @Test
        void sta_2_an_abort_closes_the_connection() throws IOException {
            try (var raw = connected()) {
                assertThat(raw.send(ABORT_OF_USER).pdu()).isEqualTo("closed");
            }
        }

        @Test
        void sta_2_artim_closes_a_connection_that_asks_for_nothing() throws IOException {
            try (var impatient = Loopback.ENGINE.listen(local(200), Services.echoing());
                    var raw = Raw.to(impatient.address().getPort())) {
                raw.send("0100"); // a request that is never finished does not hold it up
                assertThat(raw.pdu()).isEqualTo("closed");
            }
        }

        @Test
        void sta_3_only_bit_0_of_the_protocol_version_is_tested() throws IOException {
            try (var raw = connected()) {
                assertThat(raw.send(request("0003", "TERN ARCHIVE", Pdu.APPLICATION_CONTEXT)).pdu())
                        .startsWith("0200");
            }
            try (var raw = connected()) {
                assertThat(raw.send(request("0002", "TERN ARCHIVE", Pdu.APPLICATION_CONTEXT)).pdu())
                        .isEqualTo("03000000000400010202");
            }
        }

        @Test
        void sta_3_an_unknown_application_context_and_title_are_rejected() throws IOException {
            try (var raw = connected()) {
                assertThat(raw.send(request("TERN ARCHIVE", "1.2.3")).pdu())
                        .isEqualTo("03000000000400010102");
            }
            try (var raw = connected()) {
                assertThat(raw.send(request("", Pdu.APPLICATION_CONTEXT)).pdu())
                        .isEqualTo("03000000000400010107");
            }
        }

        @Test
        void sta_6_an_unrecognised_pdu_is_aborted_as_provider() throws IOException {
            try (var raw = associated()) {
                assertThat(raw.send("080000000004 00000000").pdu()).isEqualTo(UNRECOGNISED);
            }
        }

        @Test
        void sta_6_an_unexpected_pdu_is_aborted_as_provider() throws IOException {
            for (String pdu : new String[] {GOOD, "03000000000400010101", RELEASE_RP}) {
                try (var raw = associated()) {
                    assertThat(raw.send(pdu).pdu()).isEqualTo(UNEXPECTED);
                }
            }
        }

        /** A longer PDU than announced, PDVs that do not fit in, no PDV at all. */
        @Test
        void sta_6_a_data_pdu_that_does_not_add_up_is_aborted_as_provider() throws IOException {
            String[] pdus = {
                "040000001001 00000ffd 01 03",
                "040000000006 00000003 01 03",
                "040000000006 00000001 01 03",
                "040000000007 00000002 01 02 00",
                "040000000000",
                "040000000006 00000002 03 03", // a context that was not accepted
                "040000000006 00000002 01 02", // a data set where a command has to be
                "04000000000a 00000006 01 03 00000000" // no command set
            };
            for (String pdu : pdus) {
                try (var raw = associated()) {
                    assertThat(raw.send(pdu).pdu()).as(pdu).isEqualTo(INVALID_PARAMETER);
                }
            }
        }

        @Test
        void sta_6_a_message_may_come_in_any_fragments() throws IOException {
            byte[] command = HexFormat.of().parseHex(ECHO_RQ.replace(" ", "").substring(24));
            try (var raw = associated()) {
                for (int i = 0; i < command.length; i++) {
                    int control = i == command.length - 1 ? 3 : 1;
                    raw.send(
                            String.format(
                                    "040000000007 00000003 01 %02x %02x", control, command[i]));
                }
                assertThat(raw.pdu()).startsWith("0400");
            }
        }

        @Test
        void sta_6_a_lost_connection_ends_the_association() throws Exception {
            try (var raw = associated()) {
                raw.send("0400000000ff 000000fb 01 00 aa");
            }
            for (int i = 0; i < 200 && listener.associations() > 0; i++) {
                Thread.sleep(10);
            }
            assertThat(listener.associations()).isZero();
        }

        @Test
        void sta_8_a_release_is_answered_and_the_connection_left_to_the_requestor()
                throws IOException {
            try (var raw = associated()) {
                assertThat(raw.send(RELEASE_RQ).pdu()).isEqualTo(RELEASE_RP);
                raw.shutdownOutput();
                assertThat(raw.pdu()).isEqualTo("closed");
            }
        }

        @Test
        void sta_13_pdus_are_ignored_but_a_request_is_aborted_again() throws IOException {
            try (var raw = associated()) {
                assertThat(raw.send(RELEASE_RQ).pdu()).isEqualTo(RELEASE_RP);
                raw.send(P_DATA).send(RELEASE_RQ).send(RELEASE_RP);
                assertThat(raw.send(GOOD).pdu()).isEqualTo(UNEXPECTED);
                assertThat(raw.send("ff0000000000").pdu()).isEqualTo(UNRECOGNISED);
                assertThat(raw.send(ABORT_OF_USER).pdu()).isEqualTo("closed");
            }
        }

        @Test
        void sta_13_artim_closes_what_the_peer_does_not() throws IOException {
            try (var impatient = Loopback.ENGINE.listen(local(300), Services.echoing());
                    var raw = Raw.to(impatient.address().getPort())) {
                assertThat(raw.send(GOOD).pdu()).startsWith("0200");
                assertThat(raw.send(RELEASE_RQ).pdu()).isEqualTo(RELEASE_RP);
                assertThat(raw.pdu()).isEqualTo("closed");
            }
        }
    }

    @Nested
    class As_requestor {

        private static final String ACCEPT =
                "020000000061 0001 0000"
                        + "00".repeat(64)
                        + "21000019 01000000 40000011 312e322e3834302e31303030382e312e32";

        private ServerSocket server;

        @BeforeEach
        void listen() throws IOException {
            server = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
        }

        @AfterEach
        void close() throws IOException {
            server.close();
        }

        private Association associate() throws IOException {
            var remote =
                    Remote.of(
                                    "127.0.0.1",
                                    server.getLocalPort(),
                                    Loopback.ARCHIVE,
                                    Loopback.RECORDER)
                            .with(timeouts(500));
            return Loopback.ENGINE.associate(remote, Offer.verification());
        }

        private interface Script {
            void play(Raw raw) throws IOException;
        }

        private CompletableFuture<Void> peer(Script script) {
            return CompletableFuture.runAsync(
                    () -> {
                        try (var raw = new Raw(server.accept())) {
                            assertThat(raw.pdu()).startsWith("0100");
                            script.play(raw);
                        } catch (IOException e) {
                            throw new java.io.UncheckedIOException(e);
                        }
                    });
        }

        /** Our context 1 is Explicit VR, 3 Implicit VR: the peer accepts the latter. */
        private String accept() {
            return ACCEPT.replace("21000019 01", "21000019 03");
        }

        @Test
        void sta_5_an_unexpected_pdu_is_aborted_as_provider() throws Exception {
            var peer =
                    peer(
                            raw -> {
                                assertThat(raw.send(P_DATA).pdu()).isEqualTo(UNEXPECTED);
                            });
            assertThatThrownBy(this::associate)
                    .isInstanceOf(Abort.class)
                    .hasMessageStartingWith(
                            "association aborted by our service provider: unexpected PDU");
            peer.get(5, TimeUnit.SECONDS);
        }

        @Test
        void sta_5_an_abort_is_told_with_its_reason() {
            peer(raw -> raw.send("07000000000400000206"));
            assertThatThrownBy(this::associate)
                    .hasMessage(
                            "association aborted by the peer's service provider:"
                                    + " invalid PDU parameter value");
        }

        @Test
        void sta_5_a_closed_connection_is_told() {
            peer(raw -> {});
            assertThatThrownBy(this::associate).isInstanceOf(IOException.class);
        }

        /** The requestor answers first: AR-8, AR-9, then it waits for the A-RELEASE-RP. */
        @Test
        void sta_9_and_11_a_release_collision_ends_in_order() throws Exception {
            var peer =
                    peer(
                            raw -> {
                                assertThat(raw.send(accept()).pdu()).isEqualTo(RELEASE_RQ);
                                assertThat(raw.send(RELEASE_RQ).pdu()).isEqualTo(RELEASE_RP);
                                assertThat(raw.send(RELEASE_RP).pdu()).isEqualTo("closed");
                            });
            associate().release();
            peer.get(5, TimeUnit.SECONDS);
        }

        @Test
        void sta_7_data_that_still_arrives_is_taken_before_the_release_is_answered()
                throws Exception {
            var peer =
                    peer(
                            raw -> {
                                assertThat(raw.send(accept()).pdu()).isEqualTo(RELEASE_RQ);
                                raw.send(P_DATA).send("04000000000a 00000006 01 00 01020304");
                                assertThat(raw.send(RELEASE_RP).pdu()).isEqualTo("closed");
                            });
            associate().release();
            peer.get(5, TimeUnit.SECONDS);
        }

        @Test
        void sta_6_a_peer_that_releases_instead_of_answering_is_told_as_that() throws Exception {
            var peer =
                    peer(
                            raw -> {
                                assertThat(raw.send(accept()).pdu()).startsWith("0400");
                                assertThat(raw.send(RELEASE_RQ).pdu()).isEqualTo(RELEASE_RP);
                            });
            var association = associate();
            assertThatThrownBy(association::echo).hasMessageContaining("released");
            peer.get(5, TimeUnit.SECONDS);
        }

        @Test
        void an_association_without_an_accepted_context_is_still_one() throws Exception {
            var peer =
                    peer(
                            raw -> {
                                raw.send("020000000044 0001 0000" + "00".repeat(64));
                                assertThat(raw.pdu()).isEqualTo(RELEASE_RQ);
                                raw.send(RELEASE_RP);
                            });
            try (var association = associate()) {
                assertThat(association.accepted()).isEmpty();
            }
            peer.get(5, TimeUnit.SECONDS);
        }
    }
}

package dev.isoline.dicom.upper;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.dicom.spi.AeTitle;
import dev.isoline.dicom.spi.MaxPdu;
import dev.isoline.dicom.spi.Remote;
import dev.isoline.dicom.upper.Pdu.ContextResult;
import dev.isoline.dicom.upper.Pdu.ProposedContext;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** PS3.8 9.3.5, D.1 and E.2: what goes over the wire of a message, octet by octet. */
@Timeout(30)
class PDataOutputTest {

    private static final int MAX_LENGTH = 128;

    /** Of a PDU with one PDV. */
    private static final int FRAGMENT = MAX_LENGTH - 6;

    private static final UserInformation USER = UserInformation.ours(MAX_LENGTH, List.of());

    @TempDir Path folder;

    /** Around the ends of a PDU and of 32 of them. */
    @ParameterizedTest
    @ValueSource(
            ints = {
                0,
                2,
                FRAGMENT,
                FRAGMENT + 2,
                31 * FRAGMENT + 2,
                32 * FRAGMENT - 2,
                32 * FRAGMENT,
                32 * FRAGMENT + 2,
                33 * FRAGMENT,
                64 * FRAGMENT,
                100_000
            })
    void a_message_is_full_fragments_and_a_last_one(int length) throws Exception {
        byte[] content = new byte[length];
        new Random(length).nextBytes(content);
        assertThat(sent(out -> out.write(ByteBuffer.wrap(content)))).containsExactly(content);
        Path file = Files.write(folder.resolve("content"), content);
        assertThat(sent(out -> readFrom(out, file))).containsExactly(content);
    }

    private static void readFrom(PDataOutput out, Path file) throws IOException {
        try (var source = FileChannel.open(file)) {
            while (out.readFrom(source) >= 0) {
                // until it ends
            }
        }
    }

    private interface Message {
        void to(PDataOutput out) throws IOException;
    }

    /** Sends it twice over one association: the second time what is left of the first shows. */
    private static byte[] sent(Message message) throws Exception {
        try (var server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            var received = CompletableFuture.supplyAsync(() -> received(server));
            var title = new AeTitle("A");
            var layer = UpperLayer.to(Remote.of("127.0.0.1", server.getLocalPort(), title, title));
            layer.associate(
                    new Pdu.AssociateRq(
                            1,
                            "A",
                            "A",
                            Pdu.APPLICATION_CONTEXT,
                            List.of(new ProposedContext(1, "1.2", List.of("1.2.840.10008.1.2"))),
                            USER));
            var out = new PDataOutput(layer, MAX_LENGTH, new MaxPdu(0, 0));
            for (int i = 0; i < 2; i++) {
                out.start(1, false);
                message.to(out);
                out.close();
            }
            layer.release();
            out.dispose();
            List<byte[]> both = received.get(10, TimeUnit.SECONDS);
            assertThat(both).hasSize(2);
            assertThat(both.get(1)).containsExactly(both.get(0));
            return both.get(0);
        }
    }

    /** Accepts, gathers messages until release is asked for. */
    private static List<byte[]> received(ServerSocket server) {
        try (var peer = server.accept();
                var in = new DataInputStream(peer.getInputStream())) {
            in.readByte();
            in.skipNBytes(1);
            in.skipNBytes(in.readInt());
            var result = List.of(new ContextResult(1, 0, "1.2.840.10008.1.2"));
            var ac = new Pdu.AssociateAc("A", "A", result, USER);
            peer.getOutputStream().write(PduEncoder.encode(ac).array());
            List<byte[]> messages = messages(in);
            peer.getOutputStream().write(PduEncoder.encode(new Pdu.ReleaseRp()).array());
            return messages;
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static List<byte[]> messages(DataInputStream in) throws IOException {
        var messages = new ArrayList<byte[]>();
        var message = new ByteArrayOutputStream();
        while (in.readByte() == PduType.P_DATA_TF.code()) {
            assertThat(in.readByte()).isZero();
            int length = in.readInt();
            assertThat(in.readInt()).as("one PDV").isEqualTo(length - 4);
            assertThat(in.readByte()).as("context").isEqualTo((byte) 1);
            boolean last = in.readByte() == 2;
            message.writeBytes(in.readNBytes(length - 6));
            if (last) {
                assertThat(length).isLessThanOrEqualTo(MAX_LENGTH);
                messages.add(message.toByteArray());
                message.reset();
            } else {
                assertThat(length).as("full").isEqualTo(MAX_LENGTH);
            }
        }
        in.readNBytes(9);
        return messages;
    }
}

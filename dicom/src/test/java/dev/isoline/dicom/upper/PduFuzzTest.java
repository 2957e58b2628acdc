package dev.isoline.dicom.upper;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.dicom.Mutation;
import dev.isoline.dicom.spi.Timeouts;
import java.io.EOFException;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * 20,000 mutated PDUs of a fixed seed, read as from a connection: each is a PDU that is read the
 * same when it is written again, or an {@link InvalidPdu}, or ends too soon.
 */
class PduFuzzTest {

    private static final int COUNT = 20_000;

    private static final List<byte[]> SEEDS =
            Stream.of(
                            PduTest.ECHOSCU,
                            PduTest.STORESCP,
                            "0400 00000016 00000006 0101 01020304 00000008 0103 050607080900",
                            "0300 00000004 00020301",
                            "0700 00000004 00000206")
                    .map(PduTest::octets)
                    .toList();

    @Test
    @Timeout(60)
    void mutated_pdus_are_read_or_refused() throws IOException {
        var mutation = new Mutation(20261125);
        int read = 0;
        for (int i = 0; i < COUNT; i++) {
            read += isRead(mutation.of(SEEDS.get(i % SEEDS.size()))) ? 1 : 0;
        }
        assertThat(read).isBetween(COUNT / 20, COUNT - COUNT / 20);
    }

    private static boolean isRead(byte[] octets) throws IOException {
        var connection = new Octets(ByteBuffer.wrap(octets));
        var watch = new Watch(connection, Timeouts.DEFAULT);
        var input = new PduInput(new Incoming(connection, watch), 16384);
        try {
            read(input);
            return true;
        } catch (InvalidPdu | EOFException refused) {
            assertThat(refused.getMessage()).isNotBlank();
            return false;
        } finally {
            input.end();
            watch.end();
        }
    }

    private static void read(PduInput input) throws IOException {
        Pdu pdu = input.pdu(Wait.FREELY);
        if (!(pdu instanceof Pdu.PDataTf)) {
            assertThat(again(pdu)).isEqualTo(ofVersion1(pdu));
            return;
        }
        long length = 0;
        while (input.pdv(Wait.FREELY).isPresent()) {
            for (var some = input.fragment(Wait.FREELY); some.hasRemaining(); ) {
                length += some.remaining();
                some = input.fragment(Wait.FREELY);
            }
        }
        assertThat(length).isLessThan(16384);
    }

    private static Pdu again(Pdu pdu) throws InvalidPdu {
        ByteBuffer octets = PduEncoder.encode(pdu);
        return PduDecoder.decode(PduType.of(octets.get()), octets.position(6));
    }

    /** The version we write; bit 0 of what came is for the acceptor to look at. */
    private static Pdu ofVersion1(Pdu pdu) {
        return pdu instanceof Pdu.AssociateRq rq
                ? new Pdu.AssociateRq(
                        1,
                        rq.called(),
                        rq.calling(),
                        rq.applicationContext(),
                        rq.contexts(),
                        rq.user())
                : pdu;
    }

    /** A connection whose peer sends these octets and closes. */
    private record Octets(ByteBuffer octets) implements Transport {

        @Override
        public int read(ByteBuffer target) {
            if (!octets.hasRemaining()) {
                return -1;
            }
            int count = Math.min(target.remaining(), octets.remaining());
            target.put(octets.slice(octets.position(), count));
            octets.position(octets.position() + count);
            return count;
        }

        @Override
        public int read(ByteBuffer target, int millis) {
            return read(target);
        }

        @Override
        public void write(ByteBuffer source) {
            throw new UnsupportedOperationException("nothing is sent here");
        }

        @Override
        public boolean readable() {
            return octets.hasRemaining();
        }

        @Override
        public InetAddress address() {
            return InetAddress.getLoopbackAddress();
        }

        @Override
        public Optional<String> certificate() {
            return Optional.empty();
        }

        @Override
        public void open() {}

        @Override
        public void shutdownInput() {}

        @Override
        public void close() {}

        @Override
        public void abandon() {}
    }
}

package dev.isoline.dicom.dimse;

import static dev.isoline.dicom.dimse.Loopback.ENGINE;
import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DataSetWriter;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.spi.Admission;
import dev.isoline.dicom.spi.CommitmentRequest;
import dev.isoline.dicom.spi.Commitments;
import dev.isoline.dicom.spi.FindRequest;
import dev.isoline.dicom.spi.Listener;
import dev.isoline.dicom.spi.MaxPdu;
import dev.isoline.dicom.spi.Offer;
import dev.isoline.dicom.spi.Pending;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.dicom.spi.SopReference;
import dev.isoline.dicom.spi.Status;
import dev.isoline.dicom.spi.StorageProvider;
import dev.isoline.dicom.spi.StoreRequest;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.lang.management.BufferPoolMXBean;
import java.lang.management.ManagementFactory;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** 15,000 mutated streams of PDUs against a live listener: it answers or hangs up, and goes on. */
class FuzzTest {

    private static final int STREAMS = 15_000;
    private static final int SEED = 20261125;
    private static final String IMPLICIT = TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN.uid();
    private static final String INSTANCE = "1.2.3.4";

    @TempDir Path folder;

    private final AtomicInteger answered = new AtomicInteger();
    private final AtomicInteger hungUp = new AtomicInteger();
    private final java.util.Queue<Throwable> crashes =
            new java.util.concurrent.ConcurrentLinkedQueue<>();

    @Test
    @Timeout(120)
    void mutated_streams_harm_nobody_but_their_own_association() throws Exception {
        Thread.setDefaultUncaughtExceptionHandler((thread, e) -> crashes.add(e));
        List<byte[]> seeds = List.of(echo(), store(), find(), commitment());
        var local =
                Loopback.local()
                        .with(new Admission(Set.of(), false, 200))
                        .with(new MaxPdu(16384, 0));
        try (var listener = ENGINE.listen(local, services())) {
            for (byte[] seed : seeds) {
                send(listener, seed);
            }
            assertThat(answered).as("seeds are good").hasValue(seeds.size());
            long before = heap();
            IntStream.range(0, STREAMS).parallel().forEach(i -> send(listener, mutated(seeds, i)));
            assertThat(answered.get()).isGreaterThan(STREAMS / 20);
            assertThat(hungUp.get()).isGreaterThan(STREAMS / 20);
            assertThat(heap() - before).isLessThan(32L << 20);
            assertThat(direct()).isLessThan(128L << 20);
            goodAssociation(listener);
            assertThat(crashes).isEmpty();
        }
    }

    private static long heap() {
        System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }

    private static long direct() {
        return ManagementFactory.getPlatformMXBeans(BufferPoolMXBean.class).stream()
                .mapToLong(BufferPoolMXBean::getMemoryUsed)
                .sum();
    }

    private void goodAssociation(Listener listener) throws IOException {
        var offer = Offer.verification().and(Offer.storage(List.of(Loopback.AMBULATORY_ECG)));
        try (var association = ENGINE.associate(Loopback.remote(listener), offer)) {
            assertThat(association.echo()).isEqualTo(Status.SUCCESS);
            assertThat(association.store(Loopback.head(INSTANCE))).isEqualTo(Status.SUCCESS);
        }
        assertThat(Files.list(folder)).as("no file is left of what failed").isEmpty();
    }

    private Services services() {
        return Services.echoing()
                .storing(List.of(Loopback.AMBULATORY_ECG), new Discard())
                .finding(SopClass.MODALITY_WORKLIST_FIND, FuzzTest::find)
                .committing((peer, request) -> Status.SUCCESS)
                .takingResults((peer, result) -> Status.SUCCESS);
    }

    private static Status find(FindRequest request, Pending pending) throws IOException {
        for (int i = 0; i < 3; i++) {
            if (!pending.send(request.keys(), Status.PENDING)) {
                return Status.CANCEL;
            }
        }
        return Status.SUCCESS;
    }

    private final class Discard implements StorageProvider {

        private final AtomicInteger count = new AtomicInteger();

        @Override
        public Path file(StoreRequest request) {
            return folder.resolve("object-" + count.incrementAndGet());
        }

        @Override
        public Status stored(StoreRequest request, Path file, DataSet head) throws IOException {
            Files.delete(file);
            return Status.SUCCESS;
        }
    }

    /** Sends a stream and waits for the other side to hang up, which it has to. */
    private void send(Listener listener, byte[] stream) {
        try (var socket =
                new Socket(InetAddress.getLoopbackAddress(), listener.address().getPort())) {
            socket.setSoTimeout(15_000);
            write(socket, stream);
            boolean released = readToEnd(socket.getInputStream());
            (released ? answered : hungUp).incrementAndGet();
        } catch (SocketTimeoutException e) {
            throw new AssertionError("the listener hangs", e);
        } catch (IOException reset) {
            hungUp.incrementAndGet();
        }
    }

    private static void write(Socket socket, byte[] stream) {
        try {
            socket.getOutputStream().write(stream);
            socket.shutdownOutput();
        } catch (IOException reset) {
            // what it said before is still to be read
        }
    }

    /** True where it ended with an A-RELEASE-RP. */
    private static boolean readToEnd(InputStream in) throws IOException {
        byte[] all = in.readAllBytes();
        return all.length >= 10 && all[all.length - 10] == 6;
    }

    private static byte[] mutated(List<byte[]> seeds, int i) {
        var random = new Random(SEED + i);
        byte[] bytes = seeds.get(random.nextInt(seeds.size())).clone();
        for (int n = 1 + random.nextInt(4); n > 0; n--) {
            bytes = mutate(bytes, random);
        }
        return bytes;
    }

    private static byte[] mutate(byte[] bytes, Random random) {
        int at = random.nextInt(bytes.length);
        switch (random.nextInt(8)) {
            case 0 -> { // end early
                return Arrays.copyOf(bytes, Math.max(at, 1));
            }
            case 1 -> { // say it twice
                return concat(bytes, Arrays.copyOfRange(bytes, at, bytes.length));
            }
            case 2 -> { // leave something out
                int to = Math.min(bytes.length, at + 1 + random.nextInt(64));
                return concat(
                        Arrays.copyOf(bytes, Math.max(at, 1)),
                        Arrays.copyOfRange(bytes, to, bytes.length));
            }
            case 3 -> bytes[at] = (byte) 0xFF;
            case 4 -> bytes[at] = 0;
            case 5 -> bytes[at] ^= (byte) (1 << random.nextInt(8));
            default -> bytes[at] = (byte) random.nextInt(256);
        }
        return bytes;
    }

    private static byte[] concat(byte[] first, byte[] second) {
        byte[] both = Arrays.copyOf(first, first.length + second.length);
        System.arraycopy(second, 0, both, first.length, second.length);
        return both;
    }

    private static byte[] echo() {
        CommandSet echo = CommandSet.request(Field.C_ECHO, 1).affected(of(SopClass.VERIFICATION));
        return stream(data(1, echo.encode(), true));
    }

    private static byte[] store() throws IOException {
        CommandSet store =
                CommandSet.request(Field.C_STORE, 2)
                        .affected(new SopReference(Loopback.AMBULATORY_ECG, INSTANCE));
        return stream(message(3, store, Loopback.head(INSTANCE)));
    }

    private static byte[] find() throws IOException {
        CommandSet find =
                CommandSet.request(Field.C_FIND, 3).affected(of(SopClass.MODALITY_WORKLIST_FIND));
        DataSet keys = new DataSet().putText(Tag.PatientName, "*").putText(Tag.PatientID, "");
        byte[] cancel = data(5, CommandSet.cancel(3).encode(), true);
        return stream(concat(message(5, find, keys), cancel));
    }

    private static byte[] commitment() throws IOException {
        var request =
                new CommitmentRequest(
                        "1.2.9", List.of(new SopReference(Loopback.AMBULATORY_ECG, INSTANCE)));
        return stream(message(7, CommitmentScu.request(4), Commitments.dataSet(request)));
    }

    private static SopReference of(String sopClass) {
        return new SopReference(sopClass, "");
    }

    private static byte[] message(int context, CommandSet command, DataSet dataSet)
            throws IOException {
        var bytes = new ByteArrayOutputStream();
        new DataSetWriter(Channels.newChannel(bytes), TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN)
                .write(dataSet);
        return concat(
                data(context, command.withDataSet().encode(), true),
                data(context, bytes.toByteArray(), false));
    }

    /** A P-DATA-TF of two PDVs. */
    private static byte[] data(int context, byte[] content, boolean command) {
        int half = content.length / 2;
        var pdu = ByteBuffer.allocate(6 + 12 + content.length);
        pdu.put((byte) 4).put((byte) 0).putInt(12 + content.length);
        pdu.putInt(2 + half).put((byte) context).put((byte) (command ? 1 : 0));
        pdu.put(content, 0, half);
        pdu.putInt(2 + content.length - half).put((byte) context).put((byte) (command ? 3 : 2));
        return pdu.put(content, half, content.length - half).array();
    }

    private static byte[] stream(byte[] messages) {
        var all = new ByteArrayOutputStream();
        all.writeBytes(request());
        all.writeBytes(messages);
        all.writeBytes(new byte[] {5, 0, 0, 0, 0, 4, 0, 0, 0, 0});
        return all.toByteArray();
    }

    private static byte[] request() {
        var body = new ByteArrayOutputStream();
        body.writeBytes(new byte[] {0, 1, 0, 0});
        body.writeBytes("TERN ARCHIVE    REC1            ".getBytes(StandardCharsets.US_ASCII));
        body.writeBytes(new byte[32]);
        body.writeBytes(item(0x10, "1.2.840.10008.3.1.1.1".getBytes(StandardCharsets.US_ASCII)));
        List<String> classes =
                List.of(
                        SopClass.VERIFICATION,
                        Loopback.AMBULATORY_ECG,
                        SopClass.MODALITY_WORKLIST_FIND,
                        SopClass.STORAGE_COMMITMENT);
        var ids = new ArrayList<>(List.of(1, 3, 5, 7));
        classes.forEach(c -> body.writeBytes(context(ids.remove(0), c)));
        body.writeBytes(item(0x50, item(0x51, new byte[] {0, 0, 0x40, 0})));
        byte[] header = ByteBuffer.allocate(6).put((byte) 1).putInt(2, body.size()).array();
        return concat(header, body.toByteArray());
    }

    private static byte[] context(int id, String sopClass) {
        byte[] syntaxes =
                concat(
                        item(0x30, sopClass.getBytes(StandardCharsets.US_ASCII)),
                        item(0x40, IMPLICIT.getBytes(StandardCharsets.US_ASCII)));
        return item(0x20, concat(new byte[] {(byte) id, 0, 0, 0}, syntaxes));
    }

    private static byte[] item(int type, byte[] content) {
        return ByteBuffer.allocate(4 + content.length)
                .put((byte) type)
                .put((byte) 0)
                .putShort((short) content.length)
                .put(content)
                .array();
    }
}

package dev.isoline.dicom.peer;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.FileBulk;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.Uid;
import dev.isoline.dicom.Vr;
import dev.isoline.dicom.dimse.Loopback;
import dev.isoline.dicom.spi.DicomEngine;
import dev.isoline.dicom.spi.Listener;
import dev.isoline.dicom.spi.MaxPdu;
import dev.isoline.dicom.spi.Offer;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.SopReference;
import dev.isoline.dicom.spi.Status;
import dev.isoline.dicom.spi.StorageProvider;
import dev.isoline.dicom.spi.StoreRequest;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** C-STORE of a day of ECG both ways, against DCMTK's; run by docs/benchmarks/dimse. */
public final class DimseBenchmark {

    /** 24 h x 3 channels x 200 Hz x 2 bytes. */
    private static final int SAMPLES = 24 * 3600 * 200 * 3 * 2;

    private static final String INSTANCE = Uid.of("benchmark");

    private final Path folder;
    private final int rounds;
    private final Path object;
    private final Path small;
    private final DicomEngine engine = DicomEngine.find();
    private final Map<String, List<Double>> taken = new LinkedHashMap<>();

    private DimseBenchmark(Path folder, int rounds) throws IOException {
        this.folder = folder;
        this.rounds = rounds;
        this.object = object();
        this.small = small();
    }

    public static void main(String[] args) throws IOException {
        var benchmark = new DimseBenchmark(Path.of(args[0]), Integer.parseInt(args[1]));
        benchmark.sending("storescp, its default of 16 KiB");
        benchmark.sending("storescp at 128 KiB", "-pdu", "131072");
        benchmark.receiving("16 KiB", 16384, 16384);
        benchmark.receiving("128 KiB", 131072, 131072);
        benchmark.receiving("the default of each", 16384, MaxPdu.DEFAULT.receive());
        benchmark.print();
    }

    private Path object() throws IOException {
        Path raw = folder.resolve("samples");
        byte[] second = new byte[SAMPLES / (24 * 3600)];
        var random = new Random(1);
        try (var out = new java.io.BufferedOutputStream(Files.newOutputStream(raw), 1 << 20)) {
            for (int i = 0; i < 24 * 3600; i++) {
                random.nextBytes(second);
                out.write(second);
            }
        }
        try (var samples = FileChannel.open(raw)) {
            return write("object.dcm", samples, SAMPLES);
        }
    }

    private Path small() throws IOException {
        try (var samples = FileChannel.open(folder.resolve("samples"))) {
            return write("small.dcm", samples, 2);
        }
    }

    private Path write(String name, FileChannel samples, int length) throws IOException {
        var group =
                new DataSet().putBulk(Tag.WaveformData, Vr.OW, new FileBulk(samples, 0, length));
        Path file = folder.resolve(name);
        try (var target =
                FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            DataSet dataSet =
                    Loopback.head(INSTANCE).putItems(Tag.WaveformSequence, List.of(group));
            Part10.write(target, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN, dataSet);
        }
        return file;
    }

    private interface Run {
        void run() throws IOException;
    }

    private void time(String what, boolean counted, Run run) throws IOException {
        long start = System.nanoTime();
        run.run();
        double seconds = (System.nanoTime() - start) / 1e9;
        taken.computeIfAbsent(counted ? what : what + " (first)", w -> new ArrayList<>())
                .add(seconds);
    }

    private void sending(String peer, Object... options) throws IOException {
        Path kept = Files.createDirectories(folder.resolve("kept"));
        var words = new ArrayList<Object>(List.of(options));
        words.add("--bit-preserving");
        try (var storescp = Storescp.quiet(kept, words.toArray())) {
            for (int round = 0; round <= rounds; round++) {
                boolean counted = round > 0;
                time(
                        "storescu, a small object to " + peer,
                        counted,
                        () -> storescu(storescp.port(), "STORESCP", small));
                Files.delete(storescp.files().get(0));
                time(
                        "storescu to " + peer,
                        counted,
                        () -> storescu(storescp.port(), "STORESCP", object));
                delete(storescp.files());
                time("Isoline, a small object to " + peer, counted, () -> send(storescp, small));
                Files.delete(storescp.files().get(0));
                time("Isoline to " + peer, counted, () -> send(storescp, object));
                delete(storescp.files());
            }
        }
    }

    private void send(Storescp storescp, Path file) throws IOException {
        var offer = Offer.storage(List.of(Loopback.AMBULATORY_ECG));
        try (var association = engine.associate(storescp.remote(), offer)) {
            check(association.store(file).isSuccess());
        }
    }

    /** It sends fragments as long as the other side takes, up to the 128 KiB it is able to. */
    private static void storescu(int port, String called, Path file) throws IOException {
        Tool.dcmtk("storescu", "-R", "-aec", called, "127.0.0.1", port, file).succeeded();
    }

    /**
     * @param theirs maximum PDU length storescp announces
     * @param ours that Isoline announces
     */
    private void receiving(String length, int theirs, int ours) throws IOException {
        try (var exact = storescp("exact", theirs, "--bit-preserving");
                var usual = storescp("usual", theirs);
                var plain = listen(ours, false);
                var forcing = listen(ours, true)) {
            String at = " from storescu at " + length;
            for (int round = 0; round <= rounds; round++) {
                boolean counted = round > 0;
                time(
                        "storescp --bit-preserving" + at,
                        counted,
                        () -> storescu(exact.port(), "STORESCP", object));
                delete(exact.files());
                time("Isoline" + at, counted, () -> storescu(plain));
                time("storescp" + at, counted, () -> storescu(usual.port(), "STORESCP", object));
                delete(usual.files());
                time(
                        "storescp --bit-preserving, then sync," + at,
                        counted,
                        () -> storescuAndSync(exact));
                delete(exact.files());
                time("Isoline, forced to disk," + at, counted, () -> storescu(forcing));
            }
        }
    }

    private Storescp storescp(String name, int pdu, Object... options) throws IOException {
        var words = new ArrayList<Object>(List.of(options));
        words.addAll(List.of("-pdu", pdu));
        return Storescp.quiet(Files.createDirectories(folder.resolve(name)), words.toArray());
    }

    private Listener listen(int pdu, boolean forced) throws IOException {
        var local = Loopback.local().with(new MaxPdu(pdu, 0));
        var keep = new Keep(folder.resolve("received.dcm"), forced);
        return engine.listen(
                local, Services.echoing().storing(List.of(Loopback.AMBULATORY_ECG), keep));
    }

    private void storescu(Listener listener) throws IOException {
        storescu(listener.address().getPort(), Loopback.ARCHIVE.value(), object);
    }

    private void storescuAndSync(Storescp storescp) throws IOException {
        storescu(storescp.port(), "STORESCP", object);
        Tool.run("sync", storescp.files().get(0)).succeeded();
    }

    /** Checks what arrived and removes it; the answer waits for that, as for the forcing. */
    private record Keep(Path file, boolean forced) implements StorageProvider {

        @Override
        public Path file(StoreRequest request) {
            return file;
        }

        @Override
        public Status stored(StoreRequest request, Path stored, DataSet head) throws IOException {
            check(request.instance().equals(new SopReference(Loopback.AMBULATORY_ECG, INSTANCE)));
            check(Files.size(stored) > SAMPLES);
            if (forced) {
                try (var channel = FileChannel.open(stored, StandardOpenOption.WRITE)) {
                    channel.force(true);
                }
            }
            Files.delete(stored);
            return Status.SUCCESS;
        }
    }

    private static void check(boolean right) {
        if (!right) {
            throw new IllegalStateException("a transfer failed");
        }
    }

    private static void delete(List<Path> files) throws IOException {
        for (Path file : files) {
            check(Files.size(file) > SAMPLES);
            Files.delete(file);
        }
    }

    private void print() {
        System.out.println("| transfer | median s | all runs s |\n|---|---|---|");
        taken.forEach(
                (what, seconds) -> {
                    var sorted = new ArrayList<>(seconds);
                    Collections.sort(sorted);
                    String all =
                            String.join(
                                    " ",
                                    seconds.stream().map(s -> String.format("%.2f", s)).toList());
                    System.out.printf(
                            "| %s | %.2f | %s |%n", what, sorted.get(sorted.size() / 2), all);
                });
    }
}

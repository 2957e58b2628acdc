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
    private final DicomEngine engine = DicomEngine.find();
    private final Map<String, List<Double>> taken = new LinkedHashMap<>();

    private DimseBenchmark(Path folder, int rounds) throws IOException {
        this.folder = folder;
        this.rounds = rounds;
        this.object = object();
    }

    public static void main(String[] args) throws IOException {
        var benchmark = new DimseBenchmark(Path.of(args[0]), Integer.parseInt(args[1]));
        benchmark.sending("storescp, its default of 16 KiB");
        benchmark.sending("storescp at 128 KiB", "-pdu", "131072");
        benchmark.receiving(16384);
        benchmark.receiving(131072);
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
        Path file = folder.resolve("object.dcm");
        try (var source = FileChannel.open(raw);
                var target =
                        FileChannel.open(
                                file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            DataSet dataSet =
                    Loopback.head(INSTANCE)
                            .putItems(
                                    Tag.WaveformSequence,
                                    List.of(
                                            new DataSet()
                                                    .putBulk(
                                                            Tag.WaveformData,
                                                            Vr.OW,
                                                            new FileBulk(source, 0, SAMPLES))));
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
        try (var storescp = Storescp.start(kept, words.toArray())) {
            for (int round = 0; round <= rounds; round++) {
                time(
                        "storescu to " + peer,
                        round > 0,
                        () -> storescu(storescp.port(), "STORESCP", 131072));
                delete(storescp.files());
                time("Isoline to " + peer, round > 0, () -> send(storescp));
                delete(storescp.files());
            }
        }
    }

    private void send(Storescp storescp) throws IOException {
        var offer = Offer.storage(List.of(Loopback.AMBULATORY_ECG));
        try (var association = engine.associate(storescp.remote(), offer)) {
            check(association.store(object).isSuccess());
        }
    }

    private void storescu(int port, String called, int pdu) throws IOException {
        Tool.dcmtk(
                        "storescu",
                        "-R",
                        "-pdu",
                        pdu,
                        "--max-send-pdu",
                        pdu,
                        "-aec",
                        called,
                        "127.0.0.1",
                        port,
                        object)
                .succeeded();
    }

    private void receiving(int pdu) throws IOException {
        Path kept = Files.createDirectories(folder.resolve("kept"));
        var local = Loopback.local().with(new MaxPdu(pdu, 0));
        var services = Services.echoing().storing(List.of(Loopback.AMBULATORY_ECG), new Keep(kept));
        try (var listener = engine.listen(local, services);
                var exact =
                        Storescp.start(
                                Files.createDirectories(folder.resolve("b")),
                                "-pdu",
                                pdu,
                                "--bit-preserving");
                var usual =
                        Storescp.start(Files.createDirectories(folder.resolve("n")), "-pdu", pdu)) {
            int port = listener.address().getPort();
            String at = " from storescu at " + pdu / 1024 + " KiB";
            for (int round = 0; round <= rounds; round++) {
                time(
                        "storescp --bit-preserving" + at,
                        round > 0,
                        () -> storescu(exact.port(), "STORESCP", pdu));
                delete(exact.files());
                time("storescp" + at, round > 0, () -> storescu(usual.port(), "STORESCP", pdu));
                delete(usual.files());
                time(
                        "Isoline" + at,
                        round > 0,
                        () -> storescu(port, Loopback.ARCHIVE.value(), pdu));
                check(Files.size(kept.resolve("received.dcm")) > SAMPLES);
                Files.delete(kept.resolve("received.dcm"));
            }
        }
    }

    private record Keep(Path folder) implements StorageProvider {

        @Override
        public Path file(StoreRequest request) {
            return folder.resolve("received.dcm");
        }

        @Override
        public Status stored(StoreRequest request, Path file, DataSet head) {
            check(request.instance().equals(new SopReference(Loopback.AMBULATORY_ECG, INSTANCE)));
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

package dev.isoline.worklist;

import static dev.isoline.worklist.MadeItem.with;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.spi.AeTitle;
import dev.isoline.dicom.spi.Association;
import dev.isoline.dicom.spi.DicomEngine;
import dev.isoline.dicom.spi.FindRequest;
import dev.isoline.dicom.spi.Local;
import dev.isoline.dicom.spi.Offer;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Pending;
import dev.isoline.dicom.spi.Remote;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.dicom.spi.Status;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.LedgerFactory;
import dev.isoline.ledger.WorklistTable.Entry;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;

/**
 * Queries of a worklist of 1,000 and of 1,000,000 orders, through the provider and over the wire:
 * docs/benchmarks/worklist.
 */
final class WorklistBenchmark {

    private static final int DAYS = 100;
    private static final int CHUNK = 2000;
    private static final int SECONDS = 2;
    private static final LocalDate FIRST = LocalDate.of(2026, 11, 2);
    private static final String[] SYLLABLES = {
        "MO", "REAU", "KA", "LIN", "BER", "TO", "SAN", "DE", "VAL", "RI", "NOR", "EK", "HOL", "ST"
    };

    private final int orders;
    private final Ledger ledger;
    private final Worklist worklist;
    private final Random random = new Random(7);

    private WorklistBenchmark(int orders, Ledger ledger) {
        this.orders = orders;
        this.ledger = ledger;
        this.worklist = new Worklist(ledger, Clock.systemUTC());
    }

    /** Databases are made anew, or kept in the folder of the property {@code worklist.folder}. */
    public static void main(String[] counts) throws Exception {
        String kept = System.getProperty("worklist.folder", "");
        for (String count : counts) {
            Path folder =
                    kept.isEmpty()
                            ? Files.createTempDirectory("isoline-worklist")
                            : Path.of(kept, count);
            boolean loaded = Files.exists(folder.resolve("isoline.db"));
            try (Ledger ledger = LedgerFactory.open("", "", "", folder)) {
                new WorklistBenchmark(Integer.parseInt(count), ledger).run(loaded);
            } finally {
                if (kept.isEmpty()) {
                    delete(folder);
                }
            }
        }
    }

    private void run(boolean loaded) throws Exception {
        long start = System.nanoTime();
        if (!loaded) {
            load();
        }
        System.out.printf(
                "%,d orders, stored in %.0f s%n", orders, (System.nanoTime() - start) / 1e9);
        System.out.printf(
                "%-34s %10s %10s %10s %12s%n",
                "query", "first ms", "worst ms", "answers", "queries/s");
        var services = Services.echoing().finding(SopClass.MODALITY_WORKLIST_FIND, worklist);
        var engine = DicomEngine.find();
        try (var listener =
                        engine.listen(Local.of(new AeTitle("ISOLINE"), "127.0.0.1", 0), services);
                var association =
                        engine.associate(
                                Remote.of(
                                        "127.0.0.1",
                                        listener.address().getPort(),
                                        new AeTitle("ISOLINE"),
                                        new AeTitle("RECORDER")),
                                Offer.worklist())) {
            for (Query query : queries()) {
                report(query, "provider", keys -> throughProvider(keys, query.most()));
                report(query, "wire", keys -> overTheWire(association, keys, query.most()));
            }
        }
    }

    /**
     * @param most answers after which the query is cancelled
     */
    private record Query(String name, int most, Keys keys) {

        Query(String name, Keys keys) {
            this(name, Integer.MAX_VALUE, keys);
        }
    }

    private interface Asked {
        long[] ask(DataSet keys) throws IOException;
    }

    private interface Keys {
        DataSet next();
    }

    private void report(Query query, String way, Asked asked) throws IOException {
        for (int i = 0; i < 5; i++) {
            asked.ask(query.keys().next());
        }
        var firsts = new ArrayList<Double>();
        long answers = 0;
        long end = System.nanoTime() + SECONDS * 1_000_000_000L;
        long begin = System.nanoTime();
        while (System.nanoTime() < end) {
            long[] result = asked.ask(query.keys().next());
            firsts.add(result[0] / 1e6);
            answers += result[1];
        }
        double seconds = (System.nanoTime() - begin) / 1e9;
        double[] sorted = firsts.stream().mapToDouble(f -> f).sorted().toArray();
        System.out.printf(
                "%-34s %10.2f %10.2f %10.1f %12.1f%n",
                query.name() + ", " + way,
                sorted[sorted.length / 2],
                sorted[sorted.length - 1],
                (double) answers / sorted.length,
                sorted.length / seconds);
    }

    private long[] throughProvider(DataSet keys, int most) throws IOException {
        var counted = new Counted(most);
        worklist.find(new FindRequest(PEER, SopClass.MODALITY_WORKLIST_FIND, keys), counted);
        return counted.result();
    }

    private static long[] overTheWire(Association association, DataSet keys, int most)
            throws IOException {
        var counted = new Counted(most);
        association.find(SopClass.MODALITY_WORKLIST_FIND, keys, counted::send);
        return counted.result();
    }

    private static final Peer PEER =
            new Peer(
                    new AeTitle("RECORDER"),
                    new AeTitle("ISOLINE"),
                    InetAddress.getLoopbackAddress(),
                    "",
                    "",
                    Optional.empty());

    /** When the first answer came and how many there were. */
    private static final class Counted implements Pending {

        private final long start = System.nanoTime();
        private final int most;
        private long first;
        private long count;

        Counted(int most) {
            this.most = most;
        }

        @Override
        public boolean send(DataSet match, Status status) {
            if (count++ == 0) {
                first = System.nanoTime() - start;
            }
            return count < most;
        }

        @Override
        public boolean cancelled() {
            return false;
        }

        long[] result() {
            return new long[] {count == 0 ? System.nanoTime() - start : first, count};
        }
    }

    private List<Query> queries() {
        return List.of(
                new Query("patient id", () -> asking(Tag.PatientID, "P" + any())),
                new Query("accession", () -> asking(Tag.AccessionNumber, "A" + any())),
                new Query(
                        "name, family and given", () -> asking(Tag.PatientName, name(any()) + "*")),
                new Query("date and modality", () -> day(date(any()), "")),
                new Query("date, modality, name beginning", this::beginningOnItsDay),
                new Query("date, modality, name containing", this::containingOnItsDay),
                new Query("a week, first 100", 100, this::week),
                new Query("everything, first 100", 100, () -> day("", "")),
                new Query("name containing", () -> asking(Tag.PatientName, within(any()))),
                new Query("name containing, nobody's", () -> asking(Tag.PatientName, "*QXQ*")));
    }

    private int any() {
        return random.nextInt(orders);
    }

    private DataSet beginningOnItsDay() {
        int order = any();
        return with(day(date(order), ""), Tag.PatientName, name(order).substring(0, 4) + "*");
    }

    private DataSet containingOnItsDay() {
        int order = any();
        return with(day(date(order), ""), Tag.PatientName, within(order));
    }

    private DataSet week() {
        int first = random.nextInt(DAYS - 7);
        return day(date(first) + "-" + date(first + 6), "");
    }

    /** The given name without its beginning, so that nothing is known of how the name begins. */
    private static String within(int order) {
        String name = name(order);
        return "*" + name.substring(name.indexOf('^') + 2) + "*";
    }

    /** What a recorder station fills its list from. */
    private static DataSet asking(int tag, String value) {
        return with(day("", ""), tag, value);
    }

    private static DataSet day(String date, String time) {
        var step =
                new DataSet()
                        .putEmpty(Tag.ScheduledStationAETitle)
                        .putEmpty(Tag.ScheduledProcedureStepDescription)
                        .putEmpty(Tag.ScheduledProcedureStepID);
        with(
                step,
                Tag.Modality,
                "ECG",
                Tag.ScheduledProcedureStepStartDate,
                date,
                Tag.ScheduledProcedureStepStartTime,
                time);
        return new DataSet()
                .putItems(Tag.ScheduledProcedureStepSequence, List.of(step))
                .putEmpty(Tag.PatientName)
                .putEmpty(Tag.PatientID)
                .putEmpty(Tag.PatientBirthDate)
                .putEmpty(Tag.AccessionNumber)
                .putEmpty(Tag.StudyInstanceUID)
                .putEmpty(Tag.RequestedProcedureID);
    }

    private void load() {
        for (int from = 0; from < orders; from += CHUNK) {
            int first = from;
            var rows = new ArrayList<Entry>();
            for (int i = first; i < Math.min(orders, first + CHUNK); i++) {
                rows.add(WorklistEntries.entry("order-" + Integer.reverse(i), item(i)));
            }
            ledger.write(
                            tables -> {
                                rows.forEach(row -> tables.worklist().put(row));
                                return null;
                            })
                    .join();
        }
    }

    private static DataSet item(int order) {
        DataSet item = MadeItem.of(name(order));
        with(
                item,
                Tag.PatientID,
                "P" + order,
                Tag.AccessionNumber,
                "A" + order,
                Tag.RequestedProcedureID,
                "A" + order);
        with(
                StoredItem.step(item),
                Tag.ScheduledProcedureStepStartDate,
                date(order),
                Tag.ScheduledProcedureStepStartTime,
                "%02d%02d00".formatted(order / 7 % 24, order % 60),
                Tag.ScheduledProcedureStepID,
                "A" + order);
        return item;
    }

    private static String date(int order) {
        return DateTimeFormatter.BASIC_ISO_DATE.format(FIRST.plusDays(order % DAYS));
    }

    /** Names as uneven as names are: some thousands of families. */
    private static String name(int order) {
        int mixed = order * 0x9E3779B1 >>> 4;
        int n = SYLLABLES.length;
        return SYLLABLES[mixed % n]
                + SYLLABLES[mixed / n % n]
                + SYLLABLES[mixed / n / n % n].toLowerCase(Locale.ROOT)
                + "^"
                + SYLLABLES[mixed / n / n / n % n]
                + (mixed / n / n / n / n % 97);
    }

    private static void delete(Path folder) throws IOException {
        try (var files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}

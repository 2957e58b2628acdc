package dev.isoline.ecg.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import dev.isoline.ecg.Damage;
import dev.isoline.ecg.FilesInMemory;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.dicom.DicomBytes;
import dev.isoline.ecg.edf.EdfBytes;
import dev.isoline.ecg.ishne.IshneBytes;
import dev.isoline.ecg.wfdb.WfdbBytes;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Ten thousand damaged files of each format, from a fixed seed: each is refused in one sentence, or
 * read to its end with blocks in order of time; one that is read short says so.
 */
class MutatedFilesTest {

    private static final int FILES = 10_000;
    private static final int SEED = 20_261_125;
    private static final int SAMPLES = 300;
    private static final int[] RAMP = IntStream.range(0, SAMPLES).map(i -> i - 100).toArray();

    enum Format {
        EDF_D {
            @Override
            Map<String, byte[]> files() {
                var edf = new EdfBytes().signal("ECG II", "uV", 100).annotations(12);
                edf.reserved = "EDF+D";
                for (int record = 0; record < 3; record++) {
                    edf.samples(Arrays.copyOfRange(RAMP, record * 100, record * 100 + 100))
                            .text("+" + record * 3 + "\u0014\u0014\0+1\u00152\u0014up\u0014\0", 12)
                            .endRecord();
                }
                return Map.of("r", edf.bytes());
            }
        },
        BDF {
            @Override
            Map<String, byte[]> files() {
                var bdf = EdfBytes.bdf().signal("ECG II", "uV", SAMPLES).samples(RAMP).endRecord();
                bdf.reserved = "24BIT";
                return Map.of("r", bdf.bytes());
            }
        },
        WFDB {
            @Override
            Map<String, byte[]> files() {
                return Map.of(
                        "r.hea",
                        text(
                                "r 2 250 300 10:00:00 01/02/2020\n"
                                        + "r.dat 212 200(0)/mV 12 0 0 14850 0 II\n"
                                        + "r.dat 212:2 200(0)/mV 12 0 0 -14850 0 V5\n"),
                        "r.dat",
                        WfdbBytes.format212(
                                IntStream.range(0, 2 * SAMPLES)
                                        .map(i -> i % 2 == 0 ? RAMP[i / 2] : -RAMP[i / 2])
                                        .toArray()),
                        "r.atr",
                        WfdbBytes.format16(
                                1 << 10 | 20,
                                28 << 10,
                                63 << 10 | 2,
                                'N' << 8 | '(',
                                5 << 10 | 99));
            }
        },
        WFDB_SEGMENTS {
            @Override
            Map<String, byte[]> files() {
                return Map.of(
                        "m.hea", text("m/4 1 250 900\nl 0\na 300\n~ 300\nb 300\n"),
                        "l.hea", text("l 1 250 0\n~ 0 200/mV 12 0 0 0 0 II\n"),
                        "a.hea", text("a 1 250 300\na.dat 16 200/mV 12 0 0 14850 0 II\n"),
                        "b.hea", text("b 1 250 300\nb.dat 310 100/mV 10 0 0 14850 0 II\n"),
                        "a.dat", WfdbBytes.format16(RAMP),
                        "b.dat", WfdbBytes.format310(RAMP));
            }
        },
        ISHNE {
            @Override
            Map<String, byte[]> files() {
                var annotations = new IshneBytes();
                annotations.magic = "ANN  1.0";
                annotations.bytes(9, 0, 0, 0, 'N', 0, 100, 0, 'V', 0, 90, 0);
                return Map.of("r", new IshneBytes().data(RAMP).file(), "s", annotations.file());
            }
        },
        DICOM {
            @Override
            Map<String, byte[]> files() throws IOException {
                var channels = List.of(new DicomBytes.Channel("II", 1, "uV", 1, 0));
                return Map.of("r", new DicomBytes().group(250, channels, RAMP).file());
            }
        },
        CSV {
            @Override
            Map<String, byte[]> files() {
                var rows = new StringBuilder("# hz: 250\n# rows: 300\n# unit: uV\ntime,II\n");
                for (int i = 0; i < SAMPLES; i++) {
                    rows.append(i < 200 ? i * 0.004 : 60 + i * 0.004).append(',').append(RAMP[i]);
                    rows.append('\n');
                }
                return Map.of("r", text(rows.toString()));
            }
        };

        abstract Map<String, byte[]> files() throws IOException;

        static byte[] text(String text) {
            return text.getBytes(StandardCharsets.US_ASCII);
        }
    }

    /** What came of a file. */
    private record Outcome(long header, long delivered, List<String> notes) {

        static final Outcome REFUSED = new Outcome(0, 0, List.of());

        boolean isRefused() {
            return this == REFUSED;
        }

        boolean isSalvaged() {
            return notes.stream().anyMatch(note -> note.startsWith("Salvaged: "));
        }

        /** As long as the whole one, by its header or, where that does not say, by its samples. */
        boolean isAsLongAs(Outcome whole) {
            return whole.header < 0 ? delivered == whole.delivered : header == whole.header;
        }
    }

    @ParameterizedTest
    @EnumSource
    void a_damaged_file_is_refused_in_one_sentence_or_read_to_its_end(Format format) {
        assertTimeoutPreemptively(Duration.ofSeconds(60), () -> mutateAndRead(format));
    }

    private static void mutateAndRead(Format format) throws IOException {
        var files = new TreeMap<>(format.files());
        var whole = outcome(files, Damage.REFUSE);
        assertThat(whole.isRefused()).isFalse();
        var random = new Random(SEED);
        int refused = 0;
        int salvaged = 0;
        for (int i = 0; i < FILES; i++) {
            var mutated = mutate(files, random);
            try {
                refused += check(outcome(mutated, Damage.REFUSE), whole).isRefused() ? 1 : 0;
                salvaged += check(outcome(mutated, Damage.SALVAGE), whole).isSalvaged() ? 1 : 0;
            } catch (RuntimeException | AssertionError e) {
                throw new AssertionError("File " + i, e);
            }
        }
        assertThat(refused).isGreaterThan(FILES / 20);
        assertThat(salvaged).isPositive();
    }

    private static Outcome check(Outcome outcome, Outcome whole) {
        if (!outcome.isRefused() && !outcome.isAsLongAs(whole)) {
            assertThat(outcome.notes()).as("%s for %s", outcome, whole).isNotEmpty();
        }
        return outcome;
    }

    private static Outcome outcome(Map<String, byte[]> files, Damage damage) throws IOException {
        try (var recording = RecordingFormats.open(new FilesInMemory(files), damage)) {
            long delivered = readAll(recording);
            return new Outcome(recording.header().samples(), delivered, recording.header().notes());
        } catch (RecordingException e) {
            assertThat(e.getMessage()).matches("[A-Z][^\n]*\\.");
            return Outcome.REFUSED;
        }
    }

    private static long readAll(Recording recording) throws IOException {
        long end = 0;
        long delivered = 0;
        for (var block = recording.next(); block.isPresent(); block = recording.next()) {
            assertThat(block.get().first()).isGreaterThanOrEqualTo(end);
            assertThat(block.get().length()).isPositive();
            end = block.get().end();
            delivered += block.get().length();
        }
        recording.referenceBeats();
        recording.rhythms();
        recording.diary();
        return delivered;
    }

    /** One file of the recording cut, lengthened, or changed in up to four places. */
    private static Map<String, byte[]> mutate(Map<String, byte[]> whole, Random random) {
        var files = new TreeMap<>(whole);
        var names = List.copyOf(files.keySet());
        String name = names.get(random.nextInt(names.size()));
        var bytes = files.get(name);
        int kind = random.nextInt(8);
        if (kind == 0) {
            bytes = Arrays.copyOf(bytes, random.nextInt(bytes.length));
        } else if (kind == 1) {
            bytes = Arrays.copyOf(bytes, bytes.length + 1 + random.nextInt(600));
        } else {
            bytes = bytes.clone();
            for (int change = random.nextInt(4); change >= 0; change--) {
                int at = place(bytes, random);
                bytes[at] =
                        kind < 5
                                ? (byte) random.nextInt(256)
                                : (byte) "0123456789 -+.:/~\n\0".charAt(random.nextInt(19));
            }
        }
        files.put(name, bytes);
        return files;
    }

    /** Headers are a small part of a file and the most telling one. */
    private static int place(byte[] bytes, Random random) {
        return random.nextInt(random.nextBoolean() ? bytes.length : Math.min(bytes.length, 800));
    }
}

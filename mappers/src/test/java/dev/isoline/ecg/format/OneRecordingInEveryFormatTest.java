package dev.isoline.ecg.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.ecg.FilesInMemory;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.Samples;
import dev.isoline.ecg.analysis.Analysis;
import dev.isoline.ecg.dicom.DicomBytes;
import dev.isoline.ecg.edf.EdfBytes;
import dev.isoline.ecg.ishne.IshneBytes;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.wfdb.WfdbBytes;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Two leads of two minutes, written in each format by small writers of the tests: the samples are
 * the same and so is all that is measured in them.
 */
class OneRecordingInEveryFormatTest {

    private static final int HZ = 250;
    private static final int SECONDS = 120;
    private static final int LENGTH = HZ * SECONDS;

    /** Microvolts of a unit. */
    private static final int RESOLUTION = 5;

    private static final int[][] LEADS = {lead(200, 1), lead(-120, 2)};

    private static Summary expected;

    /** A wave of 20 ms a side each 0.8 s, every twentieth one early, on noise of a few units. */
    private static int[] lead(int height, int seed) {
        var random = new Random(seed);
        var lead = new int[LENGTH];
        for (int i = 0; i < LENGTH; i++) {
            lead[i] = random.nextInt(5) - 2;
        }
        for (int beat = 1; beat * 200 + 100 < LENGTH; beat++) {
            int peak = beat * 200 - (beat % 20 == 0 ? 60 : 0);
            for (int i = -5; i <= 5; i++) {
                lead[peak + i] += height * (5 - Math.abs(i)) / 5;
            }
        }
        return lead;
    }

    enum Form {
        EDF {
            @Override
            FilesInMemory files() {
                var edf =
                        new EdfBytes()
                                .signal("ECG II", "uV", HZ, "-10240", "10235", "-2048", "2047")
                                .signal("ECG V5", "uV", HZ, "-10240", "10235", "-2048", "2047")
                                .annotations(10);
                for (int second = 0; second < SECONDS; second++) {
                    for (int[] lead : LEADS) {
                        edf.samples(Arrays.copyOfRange(lead, second * HZ, (second + 1) * HZ));
                    }
                    edf.text("+" + second + "\u0014\u0014\0", 10).endRecord();
                }
                return FilesInMemory.of("r", edf.bytes());
            }
        },
        BDF {
            @Override
            FilesInMemory files() {
                var bdf =
                        EdfBytes.bdf()
                                .signal("II", "uV", LENGTH, "-10240", "10235", "-2048", "2047")
                                .signal("V5", "uV", LENGTH, "-10240", "10235", "-2048", "2047")
                                .samples(LEADS[0])
                                .samples(LEADS[1])
                                .endRecord();
                bdf.reserved = "24BIT";
                bdf.recordSeconds = "" + SECONDS;
                return FilesInMemory.of("r", bdf.bytes());
            }
        },
        WFDB {
            @Override
            FilesInMemory files() {
                var header =
                        "r 2 250 %d\nr.dat 212 200(0)/mV 12 0 0 %d 0 II\n"
                                + "r.dat 212 200(0)/mV 12 0 0 %d 0 V5\n";
                return new FilesInMemory(
                        Map.of(
                                "r.hea",
                                header.formatted(LENGTH, sum(LEADS[0]), sum(LEADS[1]))
                                        .getBytes(StandardCharsets.US_ASCII),
                                "r.dat",
                                WfdbBytes.format212(interleaved())));
            }
        },
        ISHNE {
            @Override
            FilesInMemory files() {
                return FilesInMemory.of("r", new IshneBytes().data(interleaved()).file());
            }
        },
        DICOM {
            @Override
            FilesInMemory files() throws IOException {
                var channels =
                        List.of(
                                new DicomBytes.Channel("II", 5, "uV", 1, 0),
                                new DicomBytes.Channel("V5", 0.01, "mV", 0.5, 0));
                return FilesInMemory.of(
                        "r", new DicomBytes().group(HZ, channels, interleaved()).file());
            }
        },
        CSV {
            @Override
            FilesInMemory files() {
                var rows =
                        IntStream.range(0, LENGTH)
                                .mapToObj(
                                        i ->
                                                i * 0.004
                                                        + ","
                                                        + LEADS[0][i] * RESOLUTION
                                                        + ","
                                                        + LEADS[1][i] * RESOLUTION)
                                .collect(Collectors.joining("\n"));
                var text = "# hz: 250\n# resolution: 5\ntime,II,V5\n" + rows + "\n";
                return FilesInMemory.of("r", text.getBytes(StandardCharsets.US_ASCII));
            }
        };

        abstract FilesInMemory files() throws IOException;

        Recording open() throws IOException {
            return RecordingFormats.open(files());
        }
    }

    private static short sum(int[] samples) {
        return (short) Arrays.stream(samples).sum();
    }

    private static int[] interleaved() {
        return IntStream.range(0, 2 * LENGTH).map(i -> LEADS[i % 2][i / 2]).toArray();
    }

    @BeforeAll
    static void summarise() throws IOException {
        try (var recording = Form.WFDB.open()) {
            expected = Analysis.summarise(recording, AnalysisSettings.DEFAULT);
        }
    }

    @ParameterizedTest
    @EnumSource
    void the_samples_are_the_same(Form form) throws IOException {
        for (int lead = 0; lead < LEADS.length; lead++) {
            try (var recording = form.open()) {
                assertThat(recording.header().hz()).isEqualTo(HZ);
                assertThat(recording.header().leads().get(lead).label())
                        .isEqualTo(lead == 0 ? "II" : "V5");
                assertThat(recording.header().leads().get(lead).microvolts(100))
                        .isCloseTo(500, within(1e-6));
                assertThat(Samples.lead(recording, lead)).containsExactly(LEADS[lead]);
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void the_summary_is_the_same(Form form) throws IOException {
        try (var recording = form.open()) {
            var summary = Analysis.summarise(recording, AnalysisSettings.DEFAULT);
            assertThat(summary)
                    .usingRecursiveComparison()
                    .withEqualsForType(
                            (a, b) -> Math.abs(a - b) <= 1e-9 * Math.abs(a), Double.class)
                    .ignoringFields("coverage.start", "notes")
                    .isEqualTo(expected);
        }
    }

    @Test
    void there_is_something_to_compare() {
        assertThat(expected.beats().total()).isEqualTo(149);
    }
}

package dev.isoline.ecg.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.ecg.FilesInMemory;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.dicom.DicomBytes.Channel;
import dev.isoline.ecg.format.RecordingFormats;
import java.io.IOException;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Multiplex groups of ECG objects by PS3.3 C.10.9, Waveform Module. */
class MultiplexGroupsTest {

    private static final int[] MANY = IntStream.range(0, 600).toArray();

    private static Recording open(DicomBytes object) throws IOException {
        return RecordingFormats.open(FilesInMemory.of("r", object.file()));
    }

    /**
     * PS3.3 C.10.9.1.4: value = sample x sensitivity x correction factor + baseline, in its unit.
     */
    @Test
    void the_baseline_is_in_units_of_the_sensitivity_and_not_scaled_by_it() throws IOException {
        var channels =
                List.of(
                        new Channel("I", 0.0025, "mV", 0.5, 0.3),
                        new Channel("II", 2.5, "uV", 1, -10));
        try (var recording = open(new DicomBytes().group(500, channels, MANY))) {
            var leads = recording.header().leads();
            assertThat(leads.get(0).microvolts(8)).isCloseTo(8 * 1.25 + 300, within(1e-9));
            assertThat(leads.get(1).microvolts(8)).isCloseTo(10, within(1e-9));
        }
    }

    @Test
    void groups_of_one_time_and_rate_are_leads_side_by_side() throws IOException {
        var one = List.of(new Channel("I", 1, "uV", 1, 0));
        var two = List.of(new Channel("II", 1, "uV", 1, 0), new Channel("V5", 1, "uV", 1, 0));
        int[] pairs = IntStream.range(0, 1200).map(i -> -i).toArray();
        var object =
                new DicomBytes()
                        .group(250, one, MANY)
                        .group(250, two, pairs)
                        .group("DERIVED", 0, 250, one, MANY)
                        .group("ORIGINAL", 400, 250, one, MANY)
                        .group("ORIGINAL", 0, 500, one, MANY);
        try (var recording = open(object)) {
            assertThat(recording.header().leads())
                    .extracting(Lead::label)
                    .containsExactly("I", "II", "V5");
            assertThat(recording.header().notes()).hasSize(3);
            var block = recording.next().orElseThrow();
            assertThat(block.length()).isEqualTo(600);
            assertThat(block.samples()[0][599]).isEqualTo(599);
            assertThat(block.samples()[1][599]).isEqualTo(-1198);
            assertThat(block.samples()[2][599]).isEqualTo(-1199);
            assertThat(recording.next()).isEmpty();
        }
    }
}

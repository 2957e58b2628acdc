package dev.isoline.ecg.wfdb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.Damage;
import dev.isoline.ecg.FilesInMemory;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.Samples;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Records of several segments by header(5) of the WFDB Applications Guide. */
class WfdbSegmentsTest {

    private final Map<String, byte[]> files = new HashMap<>();

    private WfdbSegmentsTest header(String name, String... lines) {
        files.put(name + ".hea", String.join("\r\n", lines).getBytes(StandardCharsets.UTF_8));
        return this;
    }

    private WfdbSegmentsTest samples(String name, int... samples) {
        files.put(name, WfdbBytes.format16(samples));
        return this;
    }

    private Recording open(Damage damage) throws IOException {
        return WfdbRecording.open(new FilesInMemory(files), "m.hea", damage);
    }

    /** Example 6 of header(5): a segment that appears twice, a null record between. */
    private WfdbSegmentsTest fixed() {
        return header("m", "m/3 2 360 7 10:00:00 01/02/2020", "s 2", "null 3", "s 2")
                .header(
                        "s",
                        "s 2 360 2",
                        "s.dat 16 200 11 0 0 3 0 I",
                        "s.dat 16 200 11 0 0 30 0 II")
                .header("null", "null 2 360 3", "~ 0 200 11 0 0 0 0 I", "~ 0 200 11 0 0 0 0 II")
                .samples("s.dat", 1, 10, 2, 20);
    }

    @Test
    void segments_follow_one_another_and_a_null_record_is_a_gap() throws IOException {
        try (var recording = fixed().open(Damage.REFUSE)) {
            assertThat(recording.header().samples()).isEqualTo(7);
            assertThat(recording.header().start()).contains(LocalDateTime.of(2020, 2, 1, 10, 0));
            var blocks = Samples.blocks(recording);
            assertThat(blocks).extracting(Block::first).containsExactly(0L, 5L);
            assertThat(blocks.get(1).samples()).isEqualTo(new int[][] {{1, 2}, {10, 20}});
        }
    }

    /**
     * Variable layout: a layout segment of length 0 names the signals, segments have some of them.
     */
    @Test
    void a_variable_layout_finds_its_leads_by_their_description() throws IOException {
        header("m", "m/4 2 250 9", "l 0", "a 2", "~ 5", "b 2")
                .header("l", "l 2 250 0", "~ 0 200/mV 12 0 0 0 0 II", "~ 0 200/mV 12 0 0 0 0 V")
                .header("a", "a 1 250 2", "a.dat 16 200/mV 12 0 0 15 0 V")
                .header(
                        "b",
                        "b 2 250 2 10:00:0.028 01/02/2020",
                        "b.dat 16 200/mV 12 0 0 4 0 V",
                        "b.dat 16 200/mV 12 0 0 6 0 II")
                .samples("a.dat", 7, 8)
                .samples("b.dat", 1, 2, 3, 4);
        try (var recording = open(Damage.REFUSE)) {
            int none = Block.MISSING;
            var blocks = Samples.blocks(recording);
            assertThat(recording.header().leads())
                    .extracting(Lead::label)
                    .containsExactly("II", "V");
            assertThat(recording.header().start()).contains(LocalDateTime.of(2020, 2, 1, 10, 0));
            assertThat(blocks).extracting(Block::first).containsExactly(0L, 7L);
            assertThat(blocks.get(0).samples()).isEqualTo(new int[][] {{none, none}, {7, 8}});
            assertThat(blocks.get(1).samples()).isEqualTo(new int[][] {{2, 4}, {1, 3}});
        }
    }

    @Test
    void a_lead_that_changes_its_calibration_keeps_its_microvolts() throws IOException {
        header("m", "m/2 1 250 2", "a 1", "b 1")
                .header("a", "a 1 250 1", "a.dat 16 100(10)/mV 12 0 0 110 0 II")
                .header("b", "b 1 250 1", "b.dat 16 1000(0)/mV 12 0 0 500 0 II")
                .samples("a.dat", 110)
                .samples("b.dat", 500);
        try (var recording = open(Damage.REFUSE)) {
            var lead = recording.header().leads().get(0);
            assertThat(Samples.lead(recording, 0)).containsExactly(1000, 500);
            assertThat(lead.microvolts(1000)).isEqualTo(1000);
            assertThat(recording.header().notes()).hasSize(1);
        }
    }

    @Test
    void a_segment_that_is_absent_or_short_is_refused_and_salvaged_as_a_gap() throws IOException {
        fixed().samples("s.dat", 1, 10);
        assertThatThrownBy(() -> Samples.blocks(open(Damage.REFUSE)))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining("Segment 1: Signal file 1 of 1")
                .hasMessageContaining("4 of 8 bytes are missing");
        try (var recording = open(Damage.SALVAGE)) {
            assertThat(Samples.blocks(recording))
                    .extracting(Block::first, Block::end)
                    .containsExactly(tuple(0L, 1L), tuple(5L, 6L));
            assertThat(recording.header().notes()).hasSize(2);
        }
        files.remove("null.hea");
        refused("Segment 2: Its header is not beside");
    }

    @Test
    void segments_that_do_not_belong_together_are_refused() {
        fixed().header("m", "m/2 2 360 5", "s 2", "s 2");
        refused("announces 5 frames and its segments add up to 4");
        fixed().header("m", "m/1 2 360 3", "s 3");
        refused("Segment 1: The segment is 2 frames long, the record announces 3");
        fixed().header("m", "m/1 2 250 2", "s 2");
        refused("another sampling frequency");
        fixed().header("m", "m/1 2 360 2", "m 2");
        refused("may not have segments itself");
        fixed().header("m", "m/0 2 360 2", "s 2");
        refused("announces 0 segments");
        fixed().header("m", "m/2 2 360 2", "~ 2", "~ 0");
        refused("holds no samples");
    }

    private void refused(String says) {
        assertThatThrownBy(() -> open(Damage.REFUSE))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining(says);
    }
}

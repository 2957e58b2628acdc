package dev.isoline.ecg.wfdb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.Damage;
import dev.isoline.ecg.FilesInMemory;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.Samples;
import dev.isoline.ecg.format.RecordingFormats;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** Headers and signal files by header(5) and signal(5) of the WFDB Applications Guide. */
class WfdbRecordingTest {

    private static Recording open(String header, byte[] signal) throws IOException {
        return open(header, Map.of("r.dat", signal));
    }

    private static Recording open(String header, Map<String, byte[]> signals) throws IOException {
        var files = new HashMap<>(signals);
        files.put("r.hea", header.getBytes(StandardCharsets.UTF_8));
        return RecordingFormats.open(new FilesInMemory(files));
    }

    @Property
    void format_212_reads_back_any_samples_of_12_bits(
            @ForAll @Size(min = 1, max = 99)
                    List<@IntRange(min = -2047, max = 2047) Integer> stored)
            throws IOException {
        int[] samples = stored.stream().mapToInt(Integer::intValue).toArray();
        try (var recording =
                open("r 1 360 " + samples.length + "\nr.dat 212", WfdbBytes.format212(samples))) {
            assertThat(Samples.lead(recording, 0)).containsExactly(samples);
        }
    }

    @Property
    void format_16_reads_back_any_samples_of_16_bits(
            @ForAll @Size(min = 1, max = 99)
                    List<@IntRange(min = -32767, max = 32767) Integer> stored)
            throws IOException {
        int[] samples = stored.stream().mapToInt(Integer::intValue).toArray();
        try (var recording = open("r 1 360\nr.dat 16", WfdbBytes.format16(samples))) {
            assertThat(Samples.lead(recording, 0)).containsExactly(samples);
        }
    }

    @Test
    void the_most_negative_value_of_a_format_is_no_sample() throws IOException {
        try (var recording = open("r 1\nr.dat 212", WfdbBytes.format212(1, -2048, 3))) {
            assertThat(Samples.lead(recording, 0)).containsExactly(1, Block.MISSING, 3);
        }
    }

    @Test
    void a_short_record_line_has_250_Hz_and_the_length_of_its_file() throws IOException {
        try (var recording = open("r 2\nr.dat 16\nr.dat 16", WfdbBytes.format16(1, 2, 3, 4))) {
            assertThat(recording.header().hz()).isEqualTo(250);
            assertThat(recording.header().samples()).isEqualTo(2);
            assertThat(Samples.lead(recording, 1)).containsExactly(2, 4);
        }
    }

    @Test
    void the_whole_record_line_gives_counter_length_time_and_date() throws IOException {
        var header = "r 1 128/360(10.5) 2 13:05:7.25 25/04/1989\r\n# said\r\nr.dat 16 200\r\n";
        try (var recording = open(header, WfdbBytes.format16(1, 2))) {
            assertThat(recording.header().hz()).isEqualTo(128);
            assertThat(recording.header().start())
                    .contains(LocalDateTime.of(1989, 4, 25, 13, 5, 7, 250_000_000));
        }
    }

    @Test
    void gain_baseline_and_units_give_microvolts() throws IOException {
        try (var recording =
                open("r 1 360\nr.dat 16 0.5(100)/uV 12 7 0 0 0 a lead", WfdbBytes.format16(101))) {
            assertThat(recording.header().leads()).containsExactly(new Lead("a lead", 2, -200, 12));
        }
    }

    @Test
    void the_baseline_is_the_zero_of_the_converter_when_not_given() throws IOException {
        try (var recording = open("r 1 360\nr.dat 212 200 11 1024", WfdbBytes.format212(1024))) {
            assertThat(recording.header().leads().get(0).microvolts(1224)).isEqualTo(1000.0);
        }
    }

    @Test
    void several_signal_files_run_side_by_side_past_their_offset() throws IOException {
        var files =
                Map.of(
                        "a.dat", WfdbBytes.format16(777, 1, 2),
                        "b.dat", WfdbBytes.format212(-5, 6));
        try (var recording = open("r 2 360 2\na.dat 16+2\nb.dat 212", files)) {
            var block = recording.next().orElseThrow();
            assertThat(block.samples()).isEqualTo(new int[][] {{1, 2}, {-5, 6}});
            assertThat(recording.header().format()).isEqualTo("WFDB 16+212");
        }
    }

    @Test
    void a_skewed_signal_is_moved_back_into_line() throws IOException {
        try (var recording =
                open("r 2 360\nr.dat 16\nr.dat 16:1", WfdbBytes.format16(1, 99, 2, 11, 3, 12))) {
            assertThat(recording.next().orElseThrow().samples())
                    .isEqualTo(new int[][] {{1, 2, 3}, {11, 12, Block.MISSING}});
        }
    }

    @Test
    void a_signal_of_several_samples_a_frame_makes_the_rate_of_a_recording() throws IOException {
        var header = "r 2 100\nr.dat 16x2 200 0 0 0 0 0 fast\nr.dat 16 200 0 0 0 0 0 slow";
        try (var recording = open(header, WfdbBytes.format16(1, 2, 50, 3, 4, 51))) {
            assertThat(recording.header().hz()).isEqualTo(200);
            assertThat(recording.header().notes()).hasSize(1).first().asString().contains("slow");
            assertThat(Samples.lead(recording, 0)).containsExactly(1, 2, 3, 4);
        }
    }

    @Test
    void a_wrong_checksum_is_refused_at_the_end_and_noted_where_damage_is_salvaged()
            throws IOException {
        var right = "r 1 360 3\nr.dat 16 200 16 0 1 ";
        assertThat(notes(right + "6 0 I", Damage.REFUSE)).isEmpty();
        assertThat(notes(right + (6 + 65_536) + " 0 I", Damage.REFUSE)).isEmpty();
        assertThat(notes(right + "7 0 I", Damage.SALVAGE))
                .containsExactly(
                        "Salvaged: Signal 1 does not have the checksum its WFDB header gives, 7.");
        assertThat(notes(right + "0 0 I", Damage.REFUSE)).hasSize(1);
        assertThatThrownBy(() -> notes(right + "7 0 I", Damage.REFUSE))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining("checksum");
    }

    /** header(5): samples that a skew passes over are included in the checksum. */
    @Test
    void a_checksum_is_of_the_samples_as_stored() throws IOException {
        var header = "r 2 360 3\nr.dat 16 200 16 0 1 6 0 I\nr.dat 16:1 200 16 0 99 122 0 II";
        try (var recording = open(header, WfdbBytes.format16(1, 99, 2, 11, 3, 12))) {
            assertThat(Samples.blocks(recording)).hasSize(1);
        }
    }

    private static List<String> notes(String header, Damage damage) throws IOException {
        var files =
                new FilesInMemory(
                        Map.of(
                                "r.hea", header.getBytes(StandardCharsets.UTF_8),
                                "r.dat", WfdbBytes.format16(1, 2, 3)));
        try (var recording = RecordingFormats.open(files, damage)) {
            Samples.blocks(recording);
            return recording.header().notes();
        }
    }

    @Test
    void what_is_left_of_a_short_file_can_be_salvaged() throws IOException {
        var files =
                new FilesInMemory(
                        Map.of(
                                "r.hea", "r 1 360 9\nr.dat 16".getBytes(StandardCharsets.UTF_8),
                                "r.dat", WfdbBytes.format16(1, 2, 3)));
        try (var recording = RecordingFormats.open(files, Damage.SALVAGE)) {
            assertThat(Samples.lead(recording, 0)).containsExactly(1, 2, 3);
            assertThat(recording.header().notes())
                    .anyMatch(note -> note.contains("12 of 18 bytes are missing"));
        }
    }

    @Test
    void a_file_without_a_length_that_ends_within_a_frame_is_refused() {
        assertThatThrownBy(() -> open("r 2\nr.dat 16\nr.dat 16", WfdbBytes.format16(1, 2, 3)))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining("ends within a frame: 2 bytes");
    }

    @Test
    void a_header_without_its_signal_file_is_refused_by_the_role_of_the_file() {
        assertThatThrownBy(() -> open("r 1 360\nDoe_John.dat 16", Map.of()))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining("Signal file 1 of 1")
                .hasMessageNotContaining("Doe");
    }

    @Test
    void absurd_headers_are_refused_in_one_sentence() {
        refused("r 1 360 10\nr.dat 16", "is truncated: 16 of 20 bytes are missing");
        refused("r 0 360\n", "announces 0 signals");
        refused("r 9999 360\nr.dat 16", "announces 9999 signals");
        refused("r 2 360\nr.dat 16", "announces 2 signals and describes 1");
        refused("r/3 1 360\ns1 10\n", "announces 3 segments and describes 1");
        refused("r 1 360 99999999999\nr.dat 16", "more than a year");
        refused("r 1 0\nr.dat 16", "sampling frequency");
        refused("r 1 360\nr.dat 516", "format 516");
        refused("r 1 360\nr.dat 16x0", "Line 1 of the signals");
        refused("r 1 360\nr.dat 16x99999", "Line 1 of the signals");
        refused("r 1 360\nr.dat 16+999999999", "holds no samples");
        refused("r 1 360\nr.dat 16 1.2.3", "Line 1 of the signals");
        refused("r 1 360 1 25:00:00 01/01/2000\nr.dat 16", "no time");
        refused("r 1 360\nr.dat 16 10/NU", "no ECG signal");
    }

    private static void refused(String header, String says) {
        assertThatThrownBy(() -> open(header, WfdbBytes.format16(1, 2)))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining(says);
    }
}

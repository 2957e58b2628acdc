package dev.isoline.ecg.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.Damage;
import dev.isoline.ecg.FilesInMemory;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingHeader;
import dev.isoline.ecg.Samples;
import dev.isoline.ecg.format.RecordingFormats;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import org.junit.jupiter.api.Test;

/** CSV with a declared header, docs/formats.md. */
class CsvRecordingTest {

    private static Recording open(String text, Damage damage) throws IOException {
        var bytes = text.getBytes(StandardCharsets.UTF_8);
        return RecordingFormats.open(FilesInMemory.of("notes.txt", bytes), damage);
    }

    private static Recording open(String text) throws IOException {
        return open(text, Damage.REFUSE);
    }

    @Test
    void the_example_of_the_documentation_is_read() throws IOException {
        var text =
                """
                # ECG exported for Tern Street Monitoring
                # hz: 250
                # start: 2026-10-24T09:30:00
                # unit: mV
                # resolution: 0.005
                # rows: 4
                # patient: P-17
                # family: Quill
                # given: Ada
                # birth-date: 1951-05-02
                # sex: F
                # order: A-4711
                # equipment: Recorder 7
                time,II,V5
                0,0.005,-0.1
                0.004,0.01,
                0.008,-1.5,1
                60,0,0
                """;
        try (var recording = open(text)) {
            var header = recording.header();
            assertThat(header.hz()).isEqualTo(250);
            assertThat(header.start()).contains(LocalDateTime.of(2026, 10, 24, 9, 30));
            assertThat(header.identity())
                    .isEqualTo(
                            new RecordingHeader.Identity(
                                    "P-17", "Quill", "Ada", "1951-05-02", "F", "A-4711"));
            assertThat(header.leads())
                    .containsExactly(new Lead("II", 5, 0, 16), new Lead("V5", 5, 0, 16));
            var blocks = Samples.blocks(recording);
            assertThat(blocks).extracting(Block::first).containsExactly(0L, 15_000L);
            assertThat(blocks.get(0).samples())
                    .isEqualTo(new int[][] {{1, 2, -300}, {-20, Block.MISSING, 200}});
            assertThat(recording.header().notes()).isEmpty();
        }
    }

    @Test
    void without_times_the_rows_follow_one_another_in_microvolts() throws IOException {
        try (var recording = open("\ufeff#hz:500\r\nI\r\n1\r\n\r\n-2\r\nnan\r\n1e3\r\n")) {
            assertThat(recording.header().leads()).containsExactly(new Lead("I", 1, 0, 16));
            assertThat(Samples.lead(recording, 0)).containsExactly(1, -2, Block.MISSING, 1000);
        }
    }

    @Test
    void a_recording_begins_with_its_first_row() throws IOException {
        try (var recording = open("# hz: 2\n# start: 2026-01-01T00:00\ntime,I\n1.5,7\n2,8\n")) {
            assertThat(recording.header().start())
                    .contains(LocalDateTime.of(2026, 1, 1, 0, 0, 1, 500_000_000));
            assertThat(recording.next().orElseThrow().first()).isZero();
        }
    }

    @Test
    void rows_that_are_missing_are_counted() throws IOException {
        var text = "# hz: 250\n# rows: 5\nI\n1\n2\n3\n";
        refused(text, "declares 5 rows and has 3: 2 are missing");
        try (var recording = open(text, Damage.SALVAGE)) {
            assertThat(Samples.lead(recording, 0)).containsExactly(1, 2, 3);
            assertThat(recording.header().notes()).hasSize(1);
        }
    }

    @Test
    void a_row_that_cannot_be_read_is_refused_by_its_line_and_salvaged_as_missing()
            throws IOException {
        var text = "# hz: 250\nI,II\n1,2\n3\nx,4\n5,6\n";
        refused(text, "Line 4 of the CSV file has 1 fields, 2 are declared.");
        try (var recording = open(text, Damage.SALVAGE)) {
            assertThat(Samples.lead(recording, 0))
                    .containsExactly(1, Block.MISSING, Block.MISSING, 5);
            assertThat(recording.header().notes()).hasSize(2);
        }
    }

    @Test
    void what_may_be_cut_off_or_was_rounded_is_noted() throws IOException {
        try (var recording = open("# hz: 250\n# resolution: 2\nI\n1.1\n-12")) {
            assertThat(Samples.lead(recording, 0)).containsExactly(1, -6);
            assertThat(recording.header().notes()).hasSize(2);
        }
    }

    @Test
    void headers_and_rows_that_cannot_be_are_refused() {
        refused("# hz: 0\nI\n1\n", "sampling frequency");
        refused("# hz: many\nI\n1\n", "sampling frequency");
        refused("# hz: 250\n# unit: mmHg\nI\n1\n", "no voltage");
        refused("# hz: 250\n# resolution: -1\nI\n1\n", "resolution");
        refused("# hz: 250\n# start: yesterday\nI\n1\n", "no local time");
        refused("# hz: 250\n# rows: -1\nI\n1\n", "number of rows");
        refused("# hz: 250\n# birth-date: 1951\nI\n1\n", "birth date");
        refused("# hz: 250\nI,,II\n1,2,3\n", "1 to 64 leads");
        refused("# hz: 250\n", "does not name its columns");
        refused("# hz: 250\nI\n", "holds no samples");
        refused("# hz: 250\nI\n40000\n", "more than 16 bits");
        refused("# hz: 250\nI\n1f\n", "no number");
        refused("# hz: 250\ntime,I\n0,1\n0.001,2\n", "line 4 of the CSV file does not come after");
        refused("# hz: 250\ntime,I\n0,1\n99999999,2\n", "more than a year");
        refused("hz: 250\nI\n1\n", "is a text");
    }

    private static void refused(String text, String says) {
        assertThatThrownBy(() -> Samples.blocks(open(text)))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining(says);
    }
}

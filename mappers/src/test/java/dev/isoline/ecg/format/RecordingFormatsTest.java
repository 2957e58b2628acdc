package dev.isoline.ecg.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.ecg.FilesInMemory;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import dev.isoline.ecg.edf.EdfBytes;
import dev.isoline.ecg.wfdb.WfdbBytes;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The format is told by the first bytes; what is no recording is refused in one sentence. */
class RecordingFormatsTest {

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] edf() {
        return new EdfBytes()
                .signal("ECG", "mV", 1)
                .annotations(10)
                .samples(1)
                .text("+0\u0014\u0014\0", 10)
                .endRecord()
                .bytes();
    }

    @Test
    void an_EDF_file_is_known_whatever_its_name() throws IOException {
        try (var recording = RecordingFormats.open(FilesInMemory.of("letter.txt", edf()))) {
            assertThat(recording.header().format()).isEqualTo("EDF+C");
        }
    }

    @Test
    void a_WFDB_header_is_found_among_other_texts() throws IOException {
        var files =
                new FilesInMemory(
                        Map.of(
                                "a.hea", bytes("a 1 360\na.dat 16\n"),
                                "a.dat", WfdbBytes.format16(1, 2, 3),
                                "LOG", bytes("a 1 360\n"),
                                "RECORDS", bytes("a\n")));
        try (var recording = RecordingFormats.open(files)) {
            assertThat(recording.header().samples()).isEqualTo(3);
        }
    }

    @Test
    void a_text_named_edf_is_refused_as_a_text() {
        refused(
                FilesInMemory.of("r.edf", bytes("Dear colleague,\n")),
                "is a text, not a recording");
    }

    @Test
    void an_empty_file_is_refused_as_empty() {
        refused(FilesInMemory.of("r.edf", new byte[0]), "is empty");
    }

    @Test
    void unknown_bytes_are_refused() {
        refused(FilesInMemory.of("r.edf", new byte[300]), "begins neither");
    }

    @Test
    void files_without_a_header_are_refused() {
        refused(
                new FilesInMemory(Map.of("a.dat", WfdbBytes.format16(0, 1), "b.txt", bytes("x"))),
                "None of the files");
        refused(new FilesInMemory(Map.of()), "None of the files");
    }

    @Test
    void two_recordings_are_refused() {
        refused(new FilesInMemory(Map.of("a.edf", edf(), "b.edf", edf())), "2 recordings");
    }

    /** Example 6 of header(5): the header of a segment is no recording of its own. */
    @Test
    void segments_are_parts_of_their_record() throws IOException {
        var files =
                new FilesInMemory(
                        Map.of(
                                "m.hea", bytes("m/2 1 360 4\ns 2\ns 2\n"),
                                "s.hea", bytes("s 1 360 2\ns.dat 16\n"),
                                "s.dat", WfdbBytes.format16(1, 2),
                                "t.dat", WfdbBytes.format16(1, 2)));
        try (var recording = RecordingFormats.open(files)) {
            assertThat(recording.header().samples()).isEqualTo(4);
        }
        assertThat(RecordingFormats.parts(files, "m.hea"))
                .containsExactlyInAnyOrder("m.hea", "s.hea", "s.dat");
    }

    private static void refused(RecordingFiles files, String says) {
        assertThatThrownBy(() -> RecordingFormats.open(files))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining(says);
    }
}

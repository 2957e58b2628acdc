package dev.isoline.ecg.ishne;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.ecg.Beat;
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
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** ISHNE Holter 1.0 and its annotation file (Badilini 1998; the table of offsets of the format). */
class IshneRecordingTest {

    private static Recording open(IshneBytes file) throws IOException {
        return open(file.file(), Damage.REFUSE);
    }

    private static Recording open(byte[] file, Damage damage) throws IOException {
        return RecordingFormats.open(FilesInMemory.of("r", file), damage);
    }

    @Test
    void the_header_gives_identity_start_leads_and_microvolts() throws IOException {
        try (var recording = open(new IshneBytes().data(1, 10, 2, 20))) {
            var header = recording.header();
            assertThat(header.format()).isEqualTo("ISHNE 1.0");
            assertThat(header.identity())
                    .isEqualTo(
                            new RecordingHeader.Identity(
                                    "P-17", "Müller", "Ada", "1951-05-02", "F", ""));
            assertThat(header.start()).contains(LocalDateTime.of(2026, 10, 24, 9, 30, 15));
            assertThat(header.hz()).isEqualTo(250);
            assertThat(header.equipment()).isEqualTo("Recorder 7");
            assertThat(header.leads())
                    .containsExactly(new Lead("II", 5, 0, 16), new Lead("V5", 5, 0, 16));
            assertThat(header.notes()).isEmpty();
        }
    }

    @Test
    void the_leads_alternate_and_the_most_negative_value_is_no_sample() throws IOException {
        try (var recording = open(new IshneBytes().data(1, 10, -32768, 20))) {
            assertThat(recording.next().orElseThrow().samples())
                    .isEqualTo(new int[][] {{1, Block.MISSING}, {10, 20}});
            assertThat(recording.next()).isEmpty();
        }
    }

    /** CRC-CCITT with a register of ones: the check value of "123456789" is 0x29B1. */
    @Test
    void the_checksum_is_that_of_the_catalogue() {
        var digits = "123456789".getBytes(StandardCharsets.US_ASCII);
        assertThat(Crc.of(Crc.START, ByteBuffer.wrap(digits))).isEqualTo(0x29b1);
        assertThat(IshneBytes.remainder(digits, 0, 9)).isEqualTo(0x29b1);
    }

    @Test
    void a_wrong_checksum_is_refused_and_can_be_salvaged() throws IOException {
        var file = new IshneBytes().data(1, 10);
        file.spoil = 1;
        assertThatThrownBy(() -> open(file))
                .isInstanceOf(RecordingException.class)
                .hasMessage("The ISHNE header does not have the checksum it gives.");
        try (var recording = open(file.file(), Damage.SALVAGE)) {
            assertThat(Samples.lead(recording, 0)).containsExactly(1);
            assertThat(recording.header().notes()).hasSize(1);
        }
    }

    /** Some writers store samples x leads where the standard says samples of a lead. */
    @Test
    void the_size_of_the_file_tells_whose_samples_the_header_counts() throws IOException {
        var file = new IshneBytes().data(1, 10, 2, 20);
        file.samples = 4;
        try (var recording = open(file)) {
            assertThat(recording.header().samples()).isEqualTo(2);
            assertThat(Samples.lead(recording, 1)).containsExactly(10, 20);
            assertThat(recording.header().notes()).hasSize(1);
        }
        file.samples = -1;
        try (var recording = open(file)) {
            assertThat(recording.header().samples()).isEqualTo(2);
        }
    }

    @Test
    void a_short_file_says_how_many_bytes_are_missing() throws IOException {
        var whole = new IshneBytes().data(1, 10, 2, 20).file();
        var cut = Arrays.copyOf(whole, whole.length - 3);
        assertThatThrownBy(() -> open(cut, Damage.REFUSE))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining("2 samples of 2 leads, 3 bytes are missing");
        try (var recording = open(cut, Damage.SALVAGE)) {
            assertThat(recording.header().samples()).isEqualTo(1);
            assertThat(recording.header().notes()).hasSize(1);
        }
        assertThatThrownBy(() -> open(Arrays.copyOf(whole, 500), Damage.SALVAGE))
                .hasMessageContaining("22 bytes are missing");
    }

    @Test
    void headers_that_cannot_be_are_refused() {
        var leads = new IshneBytes();
        leads.specifications = new int[13];
        leads.resolutions = new int[13];
        assertThatThrownBy(() -> open(leads)).hasMessageContaining("announces 13 leads");
        var rate = new IshneBytes().data(1, 2);
        rate.hz = 0;
        assertThatThrownBy(() -> open(rate)).hasMessageContaining("no sampling frequency");
        assertThatThrownBy(() -> open(new IshneBytes())).hasMessageContaining("no samples");
    }

    @Test
    void a_pacemaker_is_a_note() throws IOException {
        var file = new IshneBytes().data(1, 10);
        file.pacemaker = 3;
        try (var recording = open(file)) {
            assertThat(recording.header().notes()).anyMatch(note -> note.contains("pacemaker"));
        }
    }

    private static List<Beat> beats(int... entries) throws IOException {
        var annotations = new IshneBytes();
        annotations.magic = "ANN  1.0";
        annotations.bytes(entries);
        var files =
                new FilesInMemory(
                        Map.of(
                                "r.ecg", new IshneBytes().data(1, 10).file(),
                                "r.ann", annotations.file()));
        try (var recording = RecordingFormats.open(files)) {
            return recording.referenceBeats();
        }
    }

    @Test
    void the_first_number_of_an_annotation_file_is_the_sample_of_an_unlabelled_beat()
            throws IOException {
        assertThat(beats(77, 1, 0, 0, 'N', 0, 200, 0, 'V', 0, 0, 1, 'S', 0, 10, 0))
                .containsExactly(
                        new Beat(333, Beat.Kind.UNCLASSIFIED),
                        new Beat(533, Beat.Kind.N),
                        new Beat(789, Beat.Kind.V),
                        new Beat(799, Beat.Kind.S));
    }

    /** The other reading: four bytes for each beat from the beginning. */
    @Test
    void an_annotation_file_without_a_first_number_begins_with_a_beat() throws IOException {
        assertThat(beats('N', 0, 77, 0, 'V', 0, 200, 0))
                .containsExactly(new Beat(77, Beat.Kind.N), new Beat(277, Beat.Kind.V));
    }

    @Test
    void labels_that_are_no_beats_only_take_their_time() throws IOException {
        assertThat(
                        beats(
                                5, 0, 0, 0, '!', 0, 255, 255, 'X', 0, 1, 0, 'C', 0, 1, 0, 'P', 0, 1,
                                0, 'B', 0, 1, 0, '?', 0, 1, 0))
                .containsExactly(
                        new Beat(5, Beat.Kind.UNCLASSIFIED),
                        new Beat(65543, Beat.Kind.Q),
                        new Beat(65544, Beat.Kind.N),
                        new Beat(65545, Beat.Kind.UNCLASSIFIED));
    }

    @Test
    void an_annotation_file_that_ends_within_a_beat_is_refused() {
        assertThatThrownBy(() -> beats(5, 0, 0, 0, 'N', 0, 1))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining("1 bytes are missing");
    }
}

package dev.isoline.ecg.edf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.Damage;
import dev.isoline.ecg.DiaryEntry;
import dev.isoline.ecg.FilesInMemory;
import dev.isoline.ecg.Filter;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingHeader;
import dev.isoline.ecg.Samples;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

/** EDF and EDF+ (Kemp et al. 1992; Kemp and Olivan 2003: EDF+ specification, section 2). */
class EdfRecordingTest {

    private static EdfBytes twoRecords() {
        return new EdfBytes()
                .signal("ECG V1", "uV", 4)
                .annotations(20)
                .samples(1, -2, 300, -2048)
                .text("+0.25\u0014\u0014\0", 20)
                .endRecord()
                .samples(5, 6, 7, 2047)
                .text("+1.25\u0014\u0014\0+1.5\u0014\u4e2d\u6587\u0014\0", 20)
                .endRecord();
    }

    private static Recording open(EdfBytes edf) throws IOException {
        return EdfRecording.open(FilesInMemory.of("r.edf", edf.bytes()), "r.edf", Damage.REFUSE);
    }

    @Test
    void the_examples_of_the_specification_give_identity_order_number_and_equipment()
            throws IOException {
        try (var recording = open(twoRecords())) {
            assertThat(recording.header().identity())
                    .isEqualTo(
                            new RecordingHeader.Identity(
                                    "MCH-0234567", "Haagse", "Harry", "1951-05-02", "F", "EMG561"));
            assertThat(recording.header().equipment()).isEqualTo("Sony. MNC R Mk2");
            assertThat(recording.header().format()).isEqualTo("EDF+C");
        }
    }

    @Test
    void the_first_annotation_gives_the_start_below_the_second() throws IOException {
        try (var recording = open(twoRecords())) {
            assertThat(recording.header().start())
                    .contains(LocalDateTime.of(2002, 3, 2, 10, 20, 30, 250_000_000));
        }
    }

    @Test
    void samples_are_little_endian_words_and_the_annotation_signal_is_no_lead() throws IOException {
        try (var recording = open(twoRecords())) {
            assertThat(recording.header().leads()).extracting(Lead::label).containsExactly("V1");
            assertThat(Samples.lead(recording, 0))
                    .containsExactly(1, -2, 300, -2048, 5, 6, 7, 2047);
        }
    }

    @Test
    void the_digital_range_maps_onto_the_physical_range() throws IOException {
        try (var recording = open(twoRecords())) {
            var lead = recording.header().leads().get(0);
            assertThat(lead.microvolts(-2048)).isEqualTo(-3000.0);
            assertThat(lead.microvolts(2047)).isCloseTo(3000, within(1e-9));
            assertThat(lead.bitsStored()).isEqualTo(12);
        }
    }

    /** EDF+ specification, 2.2.2: an annotation that keeps no time; 4 Hz, the first at 0.25 s. */
    @Test
    void other_annotations_are_the_diary_once_the_recording_was_read() throws IOException {
        var edf =
                twoRecords()
                        .samples(0, 0, 0, 0)
                        .text("+2.25\u0014\u0014\0+2.5\u00151.5\u0014stairs\u0014\0", 20)
                        .endRecord();
        try (var recording = open(edf)) {
            Samples.lead(recording, 0);
            assertThat(recording.diary())
                    .containsExactly(
                            new DiaryEntry(5, 0, "\u4e2d\u6587"), new DiaryEntry(9, 6, "stairs"));
            assertThat(recording.marksMissing()).isFalse();
        }
    }

    @Test
    void a_note_that_cannot_be_read_does_not_cost_the_ecg() throws IOException {
        var edf =
                twoRecords()
                        .samples(8, 8, 8, 8)
                        .text("+2.25\u0014\u0014\0soon\u0014stairs\u0014\0", 20)
                        .endRecord();
        try (var recording = open(edf)) {
            assertThat(Samples.lead(recording, 0)).hasSize(12);
            assertThat(recording.diary()).hasSize(1);
        }
    }

    /** EDF+ specification, 2.1.3.1 item 8. */
    @Test
    void prefiltering_gives_the_edges_in_hertz() throws IOException {
        var edf = twoRecords();
        edf.prefiltering = "HP:0.05Hz LP:75Hz N:50Hz";
        try (var recording = open(edf)) {
            var filter = recording.header().leads().get(0).filter();
            assertThat(filter.low()).hasValue(0.05);
            assertThat(filter.high()).hasValue(75);
            assertThat(filter.notch()).hasValue(50);
        }
        edf.prefiltering = "None";
        try (var recording = open(edf)) {
            assertThat(recording.header().leads().get(0).filter()).isEqualTo(Filter.UNKNOWN);
        }
    }

    @Test
    void an_unknown_part_is_an_empty_value() throws IOException {
        var edf = twoRecords();
        edf.patient = "X X X X";
        edf.recording = "Startdate 02-MAR-2002 X X X";
        try (var recording = open(edf)) {
            assertThat(recording.header().identity()).isEqualTo(RecordingHeader.Identity.NONE);
        }
    }

    @Test
    void a_two_digit_year_from_85_is_in_the_last_century() throws IOException {
        var edf = twoRecords();
        edf.recording = "";
        edf.date = "02.03.85";
        try (var recording = open(edf)) {
            assertThat(recording.header().start().orElseThrow().getYear()).isEqualTo(1985);
        }
    }

    @Test
    void a_gap_of_EDF_D_lies_between_two_blocks_at_its_time() throws IOException {
        var edf =
                new EdfBytes()
                        .signal("ECG", "mV", 4)
                        .annotations(10)
                        .samples(1, 2, 3, 4)
                        .text("+0\u0014\u0014\0", 10)
                        .endRecord()
                        .samples(5, 6, 7, 8)
                        .text("+38.5\u0014\u0014\0", 10)
                        .endRecord();
        edf.reserved = "EDF+D";
        try (var recording = open(edf)) {
            assertThat(Samples.blocks(recording))
                    .extracting(Block::first)
                    .containsExactly(0L, 154L);
        }
    }

    /** Times of EDF+D are decimals: no sum of doubles drifts, however many weeks it lasts. */
    @Test
    void a_gap_after_weeks_is_placed_to_the_sample() throws IOException {
        var edf =
                new EdfBytes()
                        .signal("ECG", "mV", 3)
                        .annotations(12)
                        .samples(1, 2, 3)
                        .text("+0.1\u0014\u0014\0", 12)
                        .endRecord()
                        .samples(4, 5, 6)
                        .text("+2419200.13\u0014\u0014\0", 12)
                        .endRecord()
                        .samples(7, 8, 9)
                        .text("+2419200.16\u0014\u0014\0", 12)
                        .endRecord();
        edf.reserved = "EDF+D";
        edf.recordSeconds = "0.03";
        try (var recording = open(edf)) {
            assertThat(Samples.blocks(recording))
                    .extracting(Block::first)
                    .containsExactly(0L, 241_920_003L);
        }
    }

    @Test
    void a_data_record_without_a_time_is_refused_and_salvaged_without_it() throws IOException {
        var edf =
                new EdfBytes()
                        .signal("ECG", "mV", 1)
                        .annotations(10)
                        .samples(1)
                        .text("+0\u0014\u0014\0", 10)
                        .endRecord()
                        .samples(2)
                        .text("soon\u0014\u0014\0", 10)
                        .endRecord()
                        .samples(3)
                        .text("+2\u0014\u0014\0", 10)
                        .endRecord();
        edf.reserved = "EDF+D";
        assertThatThrownBy(() -> open(edf))
                .isInstanceOf(RecordingException.class)
                .hasMessage("Data record 2 of the EDF+D file gives no time.");
        try (var recording = salvage(edf)) {
            assertThat(Samples.blocks(recording)).extracting(Block::first).containsExactly(0L, 2L);
            assertThat(recording.header().notes())
                    .containsExactly("Salvaged: Data record 2 of the EDF+D file gives no time.");
        }
    }

    @Test
    void the_whole_data_records_of_a_short_file_can_be_salvaged() throws IOException {
        var edf = twoRecords();
        edf.records = "5";
        try (var recording = salvage(edf)) {
            assertThat(Samples.lead(recording, 0)).hasSize(8);
            assertThat(recording.header().samples()).isEqualTo(8);
            assertThat(recording.header().notes())
                    .anyMatch(note -> note.contains("144 of them are missing"))
                    .contains("2 of 5 data records were read.");
        }
    }

    private static Recording salvage(EdfBytes edf) throws IOException {
        return EdfRecording.open(FilesInMemory.of("r", edf.bytes()), "r", Damage.SALVAGE);
    }

    @Test
    void signals_of_another_rate_or_unit_are_left_out_with_a_note() throws IOException {
        var edf =
                new EdfBytes()
                        .signal("ECG I", "mV", 2)
                        .signal("ECG II", "mV", 1)
                        .signal("ECG rate", "bpm", 2)
                        .signal("SpO2", "%", 1)
                        .samples(1, 2, 9, 60, 60, 98)
                        .endRecord();
        edf.reserved = "";
        try (var recording = open(edf)) {
            assertThat(recording.header().leads()).extracting(Lead::label).containsExactly("I");
            assertThat(recording.header().notes()).hasSize(3);
            assertThat(Samples.lead(recording, 0)).containsExactly(1, 2);
        }
    }

    @Test
    void a_truncated_file_says_how_many_bytes_are_missing() {
        var edf = twoRecords();
        edf.records = "5";
        assertThatThrownBy(() -> open(edf))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining("144 of them are missing");
    }

    @Test
    void absurd_headers_are_refused_in_one_sentence() {
        refused(edf -> edf.records = "-7", "negative number of data records");
        refused(edf -> edf.records = "many", "\"number of data records\" is not a number");
        refused(edf -> edf.recordSeconds = "0", "no duration");
        refused(edf -> edf.recordSeconds = "-1", "negative duration");
        refused(edf -> edf.recordSeconds = "1e-7", "sampling frequency");
        refused(edf -> edf.headerBytes = "99999999", "its own length");
        refused(edf -> edf.signal("ECG x", "mV", 99_999_999), "more than 16 MiB");
        refused(edf -> edf.signal("ECG x", "mV", 4, "-1", "1", "5", "5"), "no digital range");
        refused(edf -> edf.signal("ECG x", "mV", 4, "-1", "1", "5", "70000"), "-32768 to 32767");
        refused(edf -> edf.signal("ECG x", "mV", -4), "negative number of samples");
    }

    private static void refused(Consumer<EdfBytes> fault, String says) {
        var edf = twoRecords();
        fault.accept(edf);
        assertThatThrownBy(() -> open(edf))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining(says);
    }
}

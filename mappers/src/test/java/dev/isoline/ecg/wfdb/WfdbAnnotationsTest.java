package dev.isoline.ecg.wfdb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.Rhythm;
import dev.isoline.ecg.RhythmEpisode;
import dev.isoline.ecg.Stretch;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.channels.Channels;
import org.junit.jupiter.api.Test;

/** Annotation files by annot(5) of the WFDB Applications Guide. */
class WfdbAnnotationsTest {

    private static WfdbAnnotations read(int... words) throws IOException {
        var stream = new ByteArrayInputStream(WfdbBytes.format16(words));
        return WfdbAnnotations.read(Channels.newChannel(stream), 360, 1);
    }

    private static int word(int code, int step) {
        return code << 10 | step;
    }

    @Test
    void codes_become_the_five_classes_and_times_add_up() throws IOException {
        var read =
                read(
                        word(1, 100),
                        word(28, 5),
                        word(5, 200),
                        word(8, 50),
                        word(12, 1),
                        word(6, 2),
                        0);
        assertThat(read.beats())
                .containsExactly(
                        new Beat(100, Beat.Kind.N),
                        new Beat(305, Beat.Kind.V),
                        new Beat(355, Beat.Kind.S),
                        new Beat(356, Beat.Kind.Q),
                        new Beat(358, Beat.Kind.F));
    }

    @Test
    void a_skip_carries_its_high_word_first() throws IOException {
        var read = read(word(59, 0), 1, 2, word(1, 3), 0);
        assertThat(read.beats()).containsExactly(new Beat(65_536 + 2 + 3, Beat.Kind.N));
    }

    @Test
    void text_and_modifiers_take_no_time() throws IOException {
        var read = read(word(28, 1), word(63, 3), 'N' << 8 | '(', 0, word(61, 900), word(1, 1), 0);
        assertThat(read.beats()).containsExactly(new Beat(2, Beat.Kind.N));
    }

    @Test
    void flutter_is_a_stretch_and_its_waves_are_no_beats() throws IOException {
        var read = read(word(32, 10), word(31, 5), word(31, 5), word(33, 5), 0);
        assertThat(read.beats()).isEmpty();
        assertThat(read.flutter()).containsExactly(new Stretch(10, 25));
    }

    /** Rhythm changes: code 28, the rhythm in the text; qualifiers may stand between the two. */
    @Test
    void a_rhythm_lasts_to_the_next_change_and_the_last_one_to_the_end() throws IOException {
        var read =
                read(
                        word(28, 10),
                        word(61, 0),
                        word(63, 5),
                        'A' << 8 | '(',
                        'I' << 8 | 'F',
                        'B',
                        word(1, 5),
                        word(28, 85),
                        word(63, 2),
                        'N' << 8 | '(',
                        0);
        assertThat(read.rhythms(400))
                .containsExactly(
                        new RhythmEpisode(new Stretch(10, 100), Rhythm.ATRIAL_FIBRILLATION),
                        new RhythmEpisode(new Stretch(100, 400), Rhythm.SINUS));
    }

    @Test
    void a_file_that_ends_within_an_annotation_is_refused() {
        assertThatThrownBy(() -> read(word(1, 5), word(63, 40)))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining("truncated");
    }
}

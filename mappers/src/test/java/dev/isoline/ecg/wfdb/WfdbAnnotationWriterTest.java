package dev.isoline.ecg.wfdb;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Rhythm;
import dev.isoline.ecg.RhythmEpisode;
import dev.isoline.ecg.Stretch;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.channels.Channels;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** Annotation files by annot(5) of the WFDB Applications Guide. */
class WfdbAnnotationWriterTest {

    private static byte[] write(
            double hz, List<Beat> beats, List<RhythmEpisode> rhythms, List<Stretch> flutter)
            throws IOException {
        var file = new ByteArrayOutputStream();
        WfdbAnnotationWriter.write(Channels.newChannel(file), hz, beats, rhythms, flutter);
        return file.toByteArray();
    }

    /**
     * Worked by hand: NOTE (22) with 22 bytes of AUX (63); N (1) 18 later; SKIP (59) with 70,000 =
     * 0x00011170, its high word first; V (5) at once; the end.
     */
    @Test
    void words_are_those_of_annot_5() throws IOException {
        var beats = List.of(new Beat(18, Beat.Kind.N), new Beat(70_018, Beat.Kind.V));
        var text = HexFormat.of().formatHex("## time resolution: 360".getBytes());
        assertThat(HexFormat.of().formatHex(write(360, beats, List.of(), List.of())))
                .isEqualTo(
                        "0058" + "17fc" + text + "00" + "1204" + "00ec01007011" + "0014" + "0000");
    }

    @Property(tries = 200)
    void beats_read_back_as_they_were_written(
            @ForAll @Size(max = 50) List<@LongRange(min = 0, max = 100_000_000) Long> steps)
            throws IOException {
        var kinds = Beat.Kind.values();
        var beats = new ArrayList<Beat>();
        long at = 0;
        for (long step : steps) {
            at += step;
            beats.add(new Beat(at, kinds[(int) (step % 5)]));
        }
        var read = read(write(128.5, beats, List.of(), List.of()), 128.5);
        assertThat(read.beats()).isEqualTo(beats);
    }

    @Test
    void rhythms_and_flutter_read_back_and_a_beat_nobody_classified_is_a_Q() throws IOException {
        var rhythms =
                List.of(
                        new RhythmEpisode(new Stretch(0, 500), Rhythm.SINUS),
                        new RhythmEpisode(new Stretch(500, 900), Rhythm.ATRIAL_FIBRILLATION));
        var flutter = List.of(new Stretch(600, 700));
        var beats = List.of(new Beat(10, Beat.Kind.UNCLASSIFIED), new Beat(800, Beat.Kind.S));
        var read = read(write(250, beats, rhythms, flutter), 250);
        assertThat(read.rhythms(900)).isEqualTo(rhythms);
        assertThat(read.flutter()).isEqualTo(flutter);
        assertThat(read.beats())
                .containsExactly(new Beat(10, Beat.Kind.Q), new Beat(800, Beat.Kind.S));
    }

    /** The clock in the file, not the rate of the record, says what the times mean. */
    @Test
    void times_are_right_for_a_record_of_another_frame_rate() throws IOException {
        var file = write(500, List.of(new Beat(1000, Beat.Kind.N)), List.of(), List.of());
        assertThat(read(file, 250).beats()).containsExactly(new Beat(500, Beat.Kind.N));
    }

    private static WfdbAnnotations read(byte[] file, double hz) throws IOException {
        return WfdbAnnotations.read(Channels.newChannel(new ByteArrayInputStream(file)), hz, 1);
    }
}

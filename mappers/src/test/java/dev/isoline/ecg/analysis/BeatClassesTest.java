package dev.isoline.ecg.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Beat.Kind;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Classes of beats whose shapes and times the test chose; classes: ANSI/AAMI EC57. */
class BeatClassesTest {

    private static final double SECONDS = 120;

    /** Normal beats every 0.8 s; every so manieth comes early, of a kind, with a pause after it. */
    private static final class Rhythm {
        private final double[] times = SyntheticEcg.regular(SECONDS, 0.8);
        private final Kind[] kinds = new Kind[times.length];

        Rhythm(Kind kind, int every, double earlyBy) {
            Arrays.fill(kinds, Kind.N);
            for (int i = every; i < times.length; i += every) {
                times[i] -= earlyBy;
                kinds[i] = kind;
            }
        }

        SyntheticEcg ecg(double hz) {
            return new SyntheticEcg(hz, SECONDS, times).shaped(kinds);
        }
    }

    private static List<Kind> kinds(SyntheticEcg ecg) throws IOException {
        return Detection.in(ecg.cut()).beats().stream().map(Beat::kind).toList();
    }

    @ParameterizedTest(name = "{0} Hz, {1} leads, {2} mV, noise {3} mV")
    @CsvSource({
        "100, 1, 1, 0.01",
        "125, 2, -1, 0.02",
        "200, 3, 0.3, 0.01",
        "250, 12, 1, 0.03",
        "360, 2, 1, 0.05",
        "500, 1, -0.5, 0.02",
        "1000, 3, 2, 0.05"
    })
    void early_broad_beats_are_ventricular(double hz, int leads, double millivolts, double noise)
            throws IOException {
        var rhythm = new Rhythm(Kind.V, 7, 0.25);
        var ecg = rhythm.ecg(hz);
        for (int i = 0; i < leads; i++) {
            ecg.lead(i % 2 == 0 ? millivolts : millivolts / -2, noise);
        }
        assertThat(kinds(ecg)).containsExactly(rhythm.kinds);
    }

    @Test
    void without_calibration_they_are_the_same() throws IOException {
        var rhythm = new Rhythm(Kind.V, 7, 0.25);
        assertThat(kinds(rhythm.ecg(250).lead(1, 0.02).uncalibrated()))
                .containsExactly(rhythm.kinds);
    }

    @Test
    void broad_beats_are_ventricular_also_when_they_are_not_early() throws IOException {
        var rhythm = new Rhythm(Kind.V, 11, 0);
        assertThat(kinds(rhythm.ecg(250).lead(1, 0.02))).containsExactly(rhythm.kinds);
    }

    @Test
    void in_bigeminy_every_other_beat_is_ventricular() throws IOException {
        var rhythm = new Rhythm(Kind.V, 2, 0.25);
        assertThat(kinds(rhythm.ecg(250).lead(1, 0.02))).containsExactly(rhythm.kinds);
    }

    @Test
    void early_beats_of_the_normal_shape_are_supraventricular() throws IOException {
        var rhythm = new Rhythm(Kind.S, 9, 0.25);
        assertThat(kinds(rhythm.ecg(250).lead(1, 0.02))).containsExactly(rhythm.kinds);
    }

    @Test
    void halfway_between_normal_and_ventricular_is_fusion() throws IOException {
        var rhythm = new Rhythm(Kind.V, 7, 0.25);
        for (int i = 10; i < rhythm.kinds.length; i += 28) {
            rhythm.kinds[i] = Kind.F;
        }
        assertThat(kinds(rhythm.ecg(250).lead(1, 0.02))).containsExactly(rhythm.kinds);
    }

    @Test
    void in_irregular_rhythm_no_beat_of_the_normal_shape_is_called_early() throws IOException {
        var random = new Random(3);
        var times = new double[130];
        for (int i = 1; i < times.length; i++) {
            times[i] = times[i - 1] + 0.55 + 0.5 * random.nextDouble();
        }
        var ecg = new SyntheticEcg(250, times[times.length - 1] + 1, times).lead(1, 0.02);
        assertThat(kinds(ecg)).containsOnly(Kind.N);
    }

    @Test
    void where_all_beats_are_broad_they_are_normal() throws IOException {
        var times = SyntheticEcg.regular(SECONDS, 0.8);
        var kinds = new Kind[times.length];
        Arrays.fill(kinds, Kind.V);
        var ecg = new SyntheticEcg(250, SECONDS, times).shaped(kinds).lead(1, 0.02);
        assertThat(kinds(ecg)).hasSize(times.length).containsOnly(Kind.N);
    }

    @Test
    void paced_beats_are_found_once_each() throws IOException {
        var times = SyntheticEcg.regular(SECONDS, 0.8);
        var kinds = new Kind[times.length];
        Arrays.fill(kinds, Kind.Q);
        var ecg = new SyntheticEcg(500, SECONDS, times).shaped(kinds).lead(1, 0.02);
        assertThat(kinds(ecg)).hasSize(times.length);
    }

    @Test
    void while_one_lead_is_off_and_another_disturbed_the_third_tells_the_classes()
            throws IOException {
        var rhythm = new Rhythm(Kind.V, 7, 0.25);
        var ecg = rhythm.ecg(250).lead(1, 0.02).hold(30, 60, 4).lead(1, 0.02).disturb(20, 70, 1);
        assertThat(kinds(ecg.lead(0.5, 0.02))).containsExactly(rhythm.kinds);
    }

    @Test
    void after_ventricular_flutter_beats_are_found_again() throws IOException {
        var rhythm = new Rhythm(Kind.V, 7, 0.25);
        var beats = Detection.in(rhythm.ecg(250).lead(1, 0.02).flutter(40, 60).cut()).beats();
        long after = Arrays.stream(rhythm.times).filter(t -> t > 63).count();
        assertThat(beats.stream().filter(b -> b.sample() > 63 * 250)).hasSize((int) after);
    }

    @Test
    void shapes_may_change_over_hours() throws IOException {
        var times = SyntheticEcg.regular(4 * 3600, 0.8);
        var kinds = new Kind[times.length];
        Arrays.setAll(kinds, i -> i % 50 == 49 ? Kind.V : Kind.N);
        var ecg = new SyntheticEcg(100, 4 * 3600, times).shaped(kinds).lead(1, 0.02);
        ecg.raise(7200, 0.5);
        assertThat(kinds(ecg)).containsExactly(kinds);
    }
}

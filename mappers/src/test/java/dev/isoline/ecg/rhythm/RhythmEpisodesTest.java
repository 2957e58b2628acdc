package dev.isoline.ecg.rhythm;

import static dev.isoline.ecg.summary.EpisodeKind.*;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.ecg.summary.Episode;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Fibrillation, pauses, slow and fast stretches; definitions: docs/analysis.md. */
class RhythmEpisodesTest {

    /** Sinus rhythm with the swing of breathing, 4 % either way. */
    private static MadeTrack sinus(MadeTrack made, int beats, int milliseconds) {
        for (int i = 0; i < beats; i++) {
            made.beat('N', Math.round(milliseconds * (1 + 0.04 * Math.sin(i / 4.0))));
        }
        return made;
    }

    /** Intervals with a spread of 20 % and no order: common in fibrillation, from memory. */
    private static MadeTrack fibrillation(MadeTrack made, int beats, int milliseconds) {
        var random = new Random(11);
        for (int i = 0; i < beats; i++) {
            double length = milliseconds * (1 + 0.2 * random.nextGaussian());
            made.beat('N', Math.round(Math.max(300, length)));
        }
        return made;
    }

    /** Its edges are known to 60 intervals, since one alone says nothing. */
    @ParameterizedTest(name = "around {0} ms")
    @ValueSource(ints = {450, 650, 850})
    void five_minutes_of_irregular_intervals_are_fibrillation(int milliseconds) {
        var made = sinus(new MadeTrack(), 300, 850);
        long from = made.track().end();
        fibrillation(made, 300_000 / milliseconds, milliseconds);
        long to = made.track().end();
        var found = sinus(made, 300, 850).episodes(ATRIAL_FIBRILLATION);
        assertThat(found).hasSize(1);
        assertThat(found.get(0).start().toMillis()).isCloseTo(from, within(60L * milliseconds));
        assertThat(found.get(0).end().toMillis()).isCloseTo(to, within(60L * milliseconds));
    }

    @Test
    void slow_fibrillation_is_found_for_the_most_part() {
        var made = fibrillation(sinus(new MadeTrack(), 300, 900), 500, 1200);
        var burden = sinus(made, 300, 900).measures().episodes().burden(ATRIAL_FIBRILLATION);
        assertThat(burden.time()).isBetween(Duration.ofMinutes(6), Duration.ofMinutes(11));
    }

    @Test
    void the_burden_is_its_share_of_the_analysable_time() {
        var burden =
                fibrillation(new MadeTrack(), 2000, 650)
                        .measures()
                        .episodes()
                        .burden(ATRIAL_FIBRILLATION);
        assertThat(burden.percent()).isGreaterThan(98);
        assertThat(burden.episodes()).isEqualTo(1);
    }

    @Test
    void fibrillation_with_ventricular_beats_is_one_episode() {
        var made = new MadeTrack();
        for (int i = 0; i < 40; i++) {
            fibrillation(made, 12, 700).beat('V', 420);
        }
        assertThat(made.episodes(ATRIAL_FIBRILLATION)).hasSize(1);
    }

    @Test
    void fibrillation_does_not_reach_across_a_gap() {
        var made = fibrillation(new MadeTrack(), 300, 650).gap(5000);
        assertThat(fibrillation(made, 300, 650).episodes(ATRIAL_FIBRILLATION)).hasSize(2);
    }

    /** Pieces of some 14 s: none long enough alone, and the burden is nearly all of it. */
    @Test
    void fibrillation_with_a_second_of_noise_now_and_then_is_found_in_parts() {
        var made = new MadeTrack();
        for (int i = 0; i < 30; i++) {
            fibrillation(made, 22, 650).unusable(1000);
        }
        var episodes = made.measures().episodes();
        assertThat(episodes.of(ATRIAL_FIBRILLATION))
                .hasSize(30)
                .allMatch(part -> part.duration().toSeconds() < 20);
        assertThat(episodes.burden(ATRIAL_FIBRILLATION).percent()).isGreaterThan(90);
    }

    @ParameterizedTest
    @ValueSource(strings = {"NV", "NNV", "NNNV", "NNNNNV", "NNVV", "NNS", "NNNS", "NNNNNNS"})
    void early_beats_in_a_pattern_are_no_fibrillation(String pattern) {
        var made = new MadeTrack();
        for (int i = 0; i < 100; i++) {
            for (char kind : pattern.toCharArray()) {
                made.beat(kind, (kind == 'N' ? 820 : 500) + i % 7 * 4L);
            }
        }
        assertThat(made.episodes(ATRIAL_FIBRILLATION)).isEmpty();
    }

    @Test
    void breathing_is_no_fibrillation() {
        assertThat(sinus(new MadeTrack(), 2000, 900).episodes(ATRIAL_FIBRILLATION)).isEmpty();
    }

    @Test
    void a_pause_has_the_two_beats_around_it() {
        var pause = new MadeTrack().beats("NNN", 800).beat('N', 2000).episodes(PAUSE).get(0);
        assertThat(pause.start()).isEqualTo(Duration.ofMillis(2400));
        assertThat(pause.duration()).isEqualTo(Duration.ofSeconds(2));
        assertThat(pause.beats()).isEqualTo(2);
        assertThat(pause.rates()).map(Episode.Rates::mean).contains(30.0);
    }

    @Test
    void a_minute_slower_than_50_is_bradycardia() {
        var made = new MadeTrack().beats("N".repeat(60), 800).beats("N".repeat(52), 1250);
        var slow = made.beats("N".repeat(60), 800).episodes(BRADYCARDIA);
        assertThat(slow).hasSize(1);
        assertThat(slow.get(0).duration().toMillis()).isCloseTo(65_000, within(8_000L));
        assertThat(slow.get(0).rates()).map(Episode.Rates::min).contains(48.0);
    }

    @Test
    void fifty_seconds_of_a_fast_rate_are_no_tachycardia_and_seventy_are() {
        assertThat(tachycardia(50)).isEmpty();
        assertThat(tachycardia(70)).hasSize(1);
    }

    private static List<Episode> tachycardia(int seconds) {
        var made = new MadeTrack().beats("N".repeat(60), 800);
        made.beats("N".repeat(seconds * 2), 500);
        return made.beats("N".repeat(60), 800).episodes(TACHYCARDIA);
    }

    @Test
    void a_gap_parts_a_slow_stretch() {
        var made = new MadeTrack().beats("N".repeat(40), 1400).gap(3000);
        assertThat(made.beats("N".repeat(40), 1400).episodes(BRADYCARDIA)).isEmpty();
    }
}

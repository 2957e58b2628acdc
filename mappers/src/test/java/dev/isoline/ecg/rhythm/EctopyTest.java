package dev.isoline.ecg.rhythm;

import static dev.isoline.ecg.summary.EpisodeKind.*;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.ecg.rhythm.BeatTrack.Origin;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Ectopy;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.Threshold;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Groups and patterns of ectopic beats; definitions: docs/analysis.md. Ventricular tachycardia:
 * three beats or more at over 100 a minute, sustained from 30 s on (2017 AHA/ACC/HRS guideline for
 * ventricular arrhythmias).
 */
class EctopyTest {

    private static Ectopy ventricular(MadeTrack made) {
        return made.measures().beats().ventricular().orElseThrow();
    }

    @Test
    void two_in_a_row_are_a_couplet_three_a_triplet_and_a_run() {
        var v = ventricular(new MadeTrack().beats("NVNVVNVVVNVVVVN", 500));
        assertThat(v.beats()).isEqualTo(10);
        assertThat(v.couplets()).isEqualTo(1);
        assertThat(v.triplets()).isEqualTo(1);
        assertThat(v.runs()).isEqualTo(2);
        assertThat(v.runBeats()).isEqualTo(7);
        assertThat(v.longestRun().orElseThrow().beats()).isEqualTo(4);
    }

    @Test
    void a_share_is_of_all_beats_and_an_hour_of_the_analysable_time() {
        var v = ventricular(new MadeTrack().beats("NNNV".repeat(1350), 1000));
        assertThat(v.percent()).isEqualTo(25);
        assertThat(v.perHour().orElseThrow()).isCloseTo(900, within(0.01));
        assertThat(v.most()).contains(new Ectopy.MostInHour(Duration.ZERO, 899));
    }

    @ParameterizedTest(name = "{0} beats {1} ms apart: {2}")
    @CsvSource({
        "3, 599, NONSUSTAINED_VENTRICULAR_TACHYCARDIA",
        "3, 600, ACCELERATED_IDIOVENTRICULAR_RHYTHM",
        "3, 1200, ACCELERATED_IDIOVENTRICULAR_RHYTHM",
        "3, 1201, SLOW_VENTRICULAR_RUN",
        "75, 400, NONSUSTAINED_VENTRICULAR_TACHYCARDIA",
        "76, 400, SUSTAINED_VENTRICULAR_TACHYCARDIA"
    })
    void a_ventricular_run_is_named_by_its_rate_and_duration(
            int beats, long milliseconds, EpisodeKind kind) {
        var made = new MadeTrack().beats("NNN", 800).beats("V".repeat(beats), milliseconds);
        assertThat(made.beats("NNN", 900).episodes(kind)).hasSize(1);
    }

    @Test
    void a_run_has_its_start_duration_beats_and_rates() {
        var made = new MadeTrack().beats("NN", 1000).beat('V', 700).beat('V', 400).beat('V', 500);
        var run = made.beats("NN", 1000).episodes(NONSUSTAINED_VENTRICULAR_TACHYCARDIA).get(0);
        assertThat(run.start()).isEqualTo(Duration.ofMillis(2700));
        assertThat(run.duration()).isEqualTo(Duration.ofMillis(900));
        assertThat(run.beats()).isEqualTo(3);
        assertThat(run.rates().orElseThrow().mean()).isCloseTo(133.33, within(0.01));
        assertThat(run.rates()).map(Episode.Rates::min).contains(120.0);
        assertThat(run.rates()).map(Episode.Rates::max).contains(150.0);
    }

    @Test
    void a_gap_an_unusable_stretch_and_flutter_end_a_row() {
        var made = new MadeTrack().beats("NVV", 500).gap(400).beats("VV", 100);
        made.unusable(400).beats("VV", 100).flutter(400).beats("VVN", 100);
        var v = ventricular(made);
        assertThat(v.couplets()).isEqualTo(4);
        assertThat(v.runs()).isZero();
    }

    /** A person who marked beats in a stretch could see them. */
    @Test
    void beats_the_recording_brings_count_where_the_program_could_not_have_found_them() {
        var made = new MadeTrack().beats("NVV", 500).unusable(400).beats("VN", 100);
        made.origin = Origin.REFERENCE;
        assertThat(ventricular(made).runs()).isEqualTo(1);
    }

    @Test
    void three_ectopic_beats_with_one_normal_beat_between_are_bigeminy() {
        var v = ventricular(new MadeTrack().beats("NNVNVNVNNNVNVNN", 600));
        assertThat(v.bigeminy()).isEqualTo(new Ectopy.Pattern(1, 3));
        assertThat(v.trigeminy()).isEqualTo(new Ectopy.Pattern(0, 0));
    }

    @Test
    void three_ectopic_beats_with_two_normal_beats_between_are_trigeminy() {
        var made = new MadeTrack().beats("NNNVNNVNNVNNVNNN", 600);
        assertThat(ventricular(made).trigeminy()).isEqualTo(new Ectopy.Pattern(1, 4));
        var episode = made.episodes(VENTRICULAR_TRIGEMINY).get(0);
        assertThat(episode.start()).isEqualTo(Duration.ofMillis(2400));
        assertThat(episode.beats()).isEqualTo(10);
    }

    @Test
    void a_couplet_is_no_beat_of_bigeminy() {
        assertThat(ventricular(new MadeTrack().beats("NVNVVNVN", 600)).bigeminy().episodes())
                .isZero();
    }

    @Test
    void supraventricular_runs_over_100_a_minute_are_tachycardia() {
        var made = new MadeTrack().beats("NNN", 800).beats("SSSS", 500).beats("N", 900);
        made.beats("SSS", 700).beats("N", 900);
        assertThat(made.episodes(SUPRAVENTRICULAR_TACHYCARDIA)).hasSize(1);
        assertThat(made.episodes(SLOW_SUPRAVENTRICULAR_RUN)).hasSize(1);
        var s = made.measures().beats().supraventricular().orElseThrow();
        assertThat(s.fastestRun().orElseThrow().kind()).isEqualTo(SUPRAVENTRICULAR_TACHYCARDIA);
    }

    @Test
    void beats_nobody_classified_have_no_ectopy_and_no_fibrillation() {
        var made = new MadeTrack().beats("NNNN", 800);
        made.origin = Origin.NOBODY;
        assertThat(made.measures().beats().ventricular()).isEmpty();
        assertThat(made.measures().episodes().burdens())
                .doesNotContainKeys(ATRIAL_FIBRILLATION, VENTRICULAR_COUPLET)
                .containsKey(PAUSE);
    }

    @Test
    void a_run_can_be_asked_to_be_longer() {
        var five = AnalysisSettings.DEFAULT.with(Threshold.RUN_BEATS, 5);
        var v = new MadeTrack().beats("NVVVVNVVVVVN", 500).measures(five).beats().ventricular();
        assertThat(v.orElseThrow().runs()).isEqualTo(1);
    }

    @Test
    void of_many_episodes_the_longest_are_listed_and_all_counted() {
        var made = new MadeTrack().beats("VVN".repeat(1500), 500).beat('V', 500).beat('V', 450);
        var episodes = made.measures().episodes();
        assertThat(episodes.burden(VENTRICULAR_COUPLET).episodes()).isEqualTo(1501);
        assertThat(episodes.of(VENTRICULAR_COUPLET))
                .hasSize(1000)
                .allMatch(couplet -> couplet.duration().toMillis() == 500);
    }
}

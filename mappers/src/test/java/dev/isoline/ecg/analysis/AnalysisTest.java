package dev.isoline.ecg.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.ecg.Beat.Kind;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.HeartRates;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Threshold;
import java.io.IOException;
import java.time.Duration;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/** Measures of signals whose answer is known; definitions: docs/analysis.md. */
class AnalysisTest {

    private static Summary summary(SyntheticEcg ecg) throws IOException {
        return Analysis.summarise(ecg, AnalysisSettings.DEFAULT.with(Threshold.HRV_SHORTEST, 0));
    }

    /** A beat every 0.8 s up to 10.1 s, then one every 0.8 s from {@code restart} on. */
    private static double[] pausing(double seconds, double restart) {
        return DoubleStream.concat(
                        DoubleStream.of(SyntheticEcg.regular(10.7, 0.8)),
                        DoubleStream.of(SyntheticEcg.regular(seconds - restart + 0.5, 0.8))
                                .map(t -> t - 0.5 + restart))
                .toArray();
    }

    @Test
    void a_regular_rhythm_has_one_rate_and_no_variability() throws IOException {
        var s = summary(new SyntheticEcg(250, 60, SyntheticEcg.regular(60, 0.8)).lead(1, 0).cut());
        var rate = s.rates().whole().orElseThrow();
        assertThat(rate.mean()).isCloseTo(75, within(0.1));
        assertThat(rate.min()).isCloseTo(75, within(0.5));
        assertThat(rate.max()).isCloseTo(75, within(0.5));
        assertThat(s.variability().sdnn().value().orElseThrow()).isLessThan(5);
        assertThat(s.coverage().analysable())
                .isEqualTo(s.coverage().recorded())
                .isEqualTo(Duration.ofMinutes(1));
    }

    @Test
    void a_pause_is_reported_where_its_first_beat_is() throws IOException {
        var times = pausing(60, 12.6);
        var s = summary(new SyntheticEcg(250, 60, times).lead(1, 0.01).cut());
        assertThat(s.rhythm().of(EpisodeKind.PAUSE)).hasSize(1);
        var pause = s.rhythm().of(EpisodeKind.PAUSE).get(0);
        assertThat(s.rates().longestRr())
                .contains(new HeartRates.Interval(pause.start(), pause.duration()));
        assertThat(pause.start().toMillis()).isCloseTo(10_100, within(12L));
        assertThat(pause.duration().toMillis()).isCloseTo(2_500, within(12L));
    }

    @Test
    void no_interval_reaches_across_a_gap() throws IOException {
        var s =
                summary(
                        new SyntheticEcg(250, 60, SyntheticEcg.regular(60, 0.8))
                                .lead(1, 0)
                                .cut(20, 30));
        assertThat(s.rhythm().of(EpisodeKind.PAUSE)).isEmpty();
        assertThat(s.coverage().recorded()).isEqualTo(Duration.ofSeconds(50));
        assertThat(s.notes()).contains("Gaps in the recording: 1.");
    }

    @Test
    void what_is_missing_saturated_or_flat_is_not_analysable_and_no_pause() throws IOException {
        var ecg = new SyntheticEcg(250, 120, SyntheticEcg.regular(120, 0.8)).lead(1, 0.01);
        var s = summary(ecg.missing(20, 24).hold(50, 53, 4).hold(80, 90, 0.1).cut());
        assertThat(s.rhythm().of(EpisodeKind.PAUSE)).isEmpty();
        assertThat(s.coverage().analysable()).isEqualTo(Duration.ofSeconds(120 - 4 - 3 - 10));
    }

    @Test
    void classified_beats_are_counted_and_only_normal_neighbours_give_variability()
            throws IOException {
        var ecg = new SyntheticEcg(1000, 8, 1, 1.8, 2.61, 3.4, 4.205, 5, 5.5, 6.3).lead(1, 0);
        var s =
                summary(
                        ecg.reference(
                                        Kind.N, Kind.N, Kind.N, Kind.N, Kind.N, Kind.N, Kind.V,
                                        Kind.S)
                                .cut());
        assertThat(s.beats().total()).isEqualTo(8);
        assertThat(s.beats().classified()).containsEntry(Kind.V, 1L).containsEntry(Kind.S, 1L);
        var v = s.variability();
        assertThat(v.intervals()).isEqualTo(5);
        assertThat(v.sdnn().value().orElseThrow()).isCloseTo(7.906, within(0.001));
        assertThat(v.rmssd().value().orElseThrow()).isCloseTo(14.361, within(0.001));
    }

    @Test
    void every_started_hour_has_an_entry() throws IOException {
        var times = SyntheticEcg.regular(3700, 1);
        var s = summary(new SyntheticEcg(100, 3700, times).lead(1, 0.01).cut());
        assertThat(s.rates().hours())
                .extracting(HeartRates.Hour::beats)
                .containsExactly(3600L, 100L);
    }

    @Test
    void a_lead_without_beats_has_no_rate() throws IOException {
        var s = summary(new SyntheticEcg(250, 20).lead(0, 0).hold(0, 20, 0).cut());
        assertThat(s.beats().total()).isZero();
        assertThat(s.rates().whole()).isEmpty();
        assertThat(s.rates().hours()).hasSize(1);
        assertThat(s.coverage().analysable()).isEqualTo(Duration.ZERO);
    }
}

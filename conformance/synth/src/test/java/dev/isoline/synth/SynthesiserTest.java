package dev.isoline.synth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SynthesiserTest {

    private static final EcgPlan STEADY =
            new EcgPlan(
                    200,
                    60,
                    List.of("MLII"),
                    1,
                    new EcgPlan.Rate(75, 75, 0, 0),
                    Set.of(),
                    Set.of(),
                    new EcgPlan.Pause(20, 2.4),
                    Noise.NONE);

    @Test
    void a_steady_rate_of_75_gives_intervals_of_800_ms_and_one_pause() {
        Truth truth = new Synthesiser(STEADY).truth();
        assertThat(truth.maxRate()).isEqualTo(75);
        assertThat(truth.longestRr()).isEqualTo(2400);
        assertThat(truth.pauses()).containsExactly(2400.0);
        // 8 intervals with the pause among them: 7 x 800 + 2400 ms
        assertThat(truth.minRate()).isEqualTo(60);
    }

    @Test
    void the_highest_sample_around_a_normal_beat_is_its_r_peak() throws IOException {
        List<Integer> samples = samples(STEADY);
        for (TrueBeat beat : new Synthesiser(STEADY).beats()) {
            int at = (int) beat.sample();
            assertThat(samples.get(at)).isGreaterThan(200);
            assertThat(samples.subList(at - 40, at + 40)).allMatch(s -> s <= samples.get(at));
        }
    }

    @Test
    void ectopic_beats_stand_where_the_plan_put_them_and_come_early() {
        List<TrueBeat> beats = new Synthesiser(SamplePlans.ECTOPIC).beats();
        assertThat(beats.get(10).kind()).isEqualTo(BeatKind.VENTRICULAR);
        assertThat(beats.get(20).kind()).isEqualTo(BeatKind.SUPRAVENTRICULAR);
        // premature: under 80 % of the running interval (ESC definitions table)
        assertThat(rr(beats, 10)).isLessThan(0.8 * rr(beats, 9));
        assertThat(rr(beats, 20)).isLessThan(0.8 * rr(beats, 19));
        assertThat(rr(beats, 11)).isGreaterThan(1.2 * rr(beats, 9));
    }

    @Test
    void the_same_plan_gives_the_same_samples() throws IOException {
        assertThat(samples(SamplePlans.ECTOPIC)).isEqualTo(samples(SamplePlans.ECTOPIC));
    }

    @Test
    void variability_agrees_with_the_worked_example() {
        // NN = 800, 810, 790, 805, 795 ms: SDNN 7.906 (n - 1), RMSSD sqrt(825 / 4); computed by
        // hand
        var beats = new ArrayList<TrueBeat>();
        long at = 0;
        for (int rr : new int[] {0, 800, 810, 790, 805, 795}) {
            at += rr;
            beats.add(new TrueBeat(at, BeatKind.NORMAL));
        }
        Intervals intervals = Intervals.of(1000, beats);
        assertThat(intervals.sdnn()).isCloseTo(7.906, within(0.001));
        assertThat(intervals.rmssd()).isCloseTo(Math.sqrt(825 / 4.0), within(1e-9));
        assertThat(intervals.pnn50()).isZero();
    }

    @Test
    void intervals_beside_an_ectopic_beat_are_not_normal_to_normal() {
        var beats =
                List.of(
                        new TrueBeat(0, BeatKind.NORMAL),
                        new TrueBeat(800, BeatKind.NORMAL),
                        new TrueBeat(1300, BeatKind.VENTRICULAR),
                        new TrueBeat(2400, BeatKind.NORMAL),
                        new TrueBeat(3260, BeatKind.NORMAL));
        Intervals intervals = Intervals.of(1000, beats);
        assertThat(intervals.sdnn()).isCloseTo(Math.sqrt(1800), within(1e-9)); // of 800 and 860
        assertThat(intervals.rmssd()).isNaN();
    }

    @Test
    void waves_are_as_high_as_the_plan_says() throws IOException {
        var plan = EcgPlan.steady(250, 20, 75);
        int usual = samples(plan).stream().mapToInt(x -> x).max().orElseThrow();
        int low = samples(plan.withAmplitude(0.2)).stream().mapToInt(x -> x).max().orElseThrow();
        assertThat(usual / EcgPlan.UNITS_PER_MILLIVOLT).isEqualTo(1);
        assertThat((double) low / usual).isCloseTo(0.2, within(0.01));
    }

    @Test
    void fibrillation_is_irregular_and_has_no_p_wave() throws IOException {
        var plan = EcgPlan.steady(250, 120, 75).with(new Span(30, 90));
        var beats = new Synthesiser(plan).beats();
        var samples = samples(plan);
        for (int n = 1; n < beats.size() - 1; n++) {
            int at = (int) beats.get(n).sample();
            boolean fibrillates = at >= 30 * 250 && at < 90 * 250;
            if (rr(beats, n) > 0.7 * 250 && rr(beats, n + 1) > 0.7 * 250) {
                assertThat(samples.get(at - 40) > 15)
                        .as("P before beat %d", n)
                        .isEqualTo(!fibrillates);
            }
        }
        // uniform from 0.6 to 1.4: standard deviation 0.231 of the mean
        var intervals = Intervals.of(250, beats.subList(40, 110));
        assertThat(intervals.sdnn() / intervals.mean()).isBetween(0.18, 0.28);
    }

    @Test
    void a_trouble_is_on_its_lead_and_lasts_as_long_as_the_plan_says() throws IOException {
        var quiet = samples(EcgPlan.steady(250, 20, 75));
        var span = new Span(4, 6);
        for (var kind : Trouble.Kind.values()) {
            var plan = EcgPlan.steady(250, 20, 75).with(new Trouble(kind, 0, span, 0.5));
            var samples = samples(plan);
            assertThat(samples.subList(0, 1000)).isEqualTo(quiet.subList(0, 1000));
            assertThat(samples.subList(1000, 1500)).isNotEqualTo(quiet.subList(1000, 1500));
            assertThat(samples.subList(1500, 5000)).isEqualTo(quiet.subList(1500, 5000));
            var other = EcgPlan.steady(250, 20, 75).with(new Trouble(kind, 1, span, 0.5));
            assertThat(samples(other)).isEqualTo(quiet);
        }
    }

    @Test
    void a_saturated_lead_is_at_the_end_of_its_range() throws IOException {
        var trouble = new Trouble(Trouble.Kind.SATURATED, 0, new Span(4, 6), 0);
        var samples = samples(EcgPlan.steady(250, 20, 75).with(trouble));
        assertThat(samples.subList(1000, 1500)).containsOnly(EcgPlan.HIGHEST);
    }

    private static double rr(List<TrueBeat> beats, int n) {
        return beats.get(n).sample() - beats.get(n - 1).sample();
    }

    private static List<Integer> samples(EcgPlan plan) throws IOException {
        var samples = new ArrayList<Integer>();
        new Synthesiser(plan).writeTo(frame -> samples.add(frame[0]));
        return samples;
    }
}

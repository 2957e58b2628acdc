package dev.isoline.ecg.rhythm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Measure;
import dev.isoline.ecg.summary.Threshold;
import dev.isoline.ecg.summary.Variability;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Definitions: Task Force ESC/NASPE, Eur Heart J 1996;17:354-381. Values computed by hand, and at
 * the end those others published with their intervals.
 */
class HeartRateVariabilityTest {

    /** Settings under which five intervals are enough. */
    private static final AnalysisSettings SHORT =
            AnalysisSettings.DEFAULT
                    .with(Threshold.HRV_SHORTEST, 0)
                    .with(Threshold.HRV_GEOMETRIC, 0);

    private static Variability measured(AnalysisSettings settings, double... nn) {
        var variability = new HeartRateVariability(settings);
        double at = 0;
        for (double interval : nn) {
            variability.add(at, interval);
            at += Double.isNaN(interval) ? 0 : interval / 1000;
        }
        return variability.measures();
    }

    private static Variability of(double... nn) {
        return measured(SHORT, nn);
    }

    private static double value(Measure measure) {
        return measure.value().orElseThrow();
    }

    @Test
    void five_intervals_worked_by_hand() {
        var v = of(800, 810, 790, 805, 795);
        assertThat(v.intervals()).isEqualTo(5);
        assertThat(value(v.sdnn())).isCloseTo(7.906, within(0.0005));
        assertThat(value(v.rmssd())).isCloseTo(Math.sqrt(825 / 4.0), within(1e-9));
        assertThat(value(v.pnn50())).isZero();
    }

    @Test
    void an_interval_between_other_beats_breaks_the_differences() {
        var v = of(800, 860, Intervals.NONE, 1000, 1010);
        assertThat(v.intervals()).isEqualTo(4);
        assertThat(value(v.rmssd())).isCloseTo(Math.sqrt((3600 + 100) / 2.0), within(1e-9));
        assertThat(value(v.pnn50())).isEqualTo(50);
    }

    @Test
    void a_difference_of_exactly_50_ms_is_not_over_50() {
        assertThat(value(of(800, 850).pnn50())).isZero();
    }

    @Test
    void one_interval_has_no_variability() {
        assertThat(of(800).sdnn().refusal()).isPresent();
        assertThat(of(800).rmssd().refusal()).isPresent();
    }

    /** SDANN and SDNN index: 5-minute segments (Task Force 1996, table 1). */
    @Test
    void segments_of_five_minutes_give_sdann_and_sdnn_index() {
        var v =
                of(
                        AnalysisSettings.DEFAULT,
                        alternating(400, 740, 760),
                        alternating(400, 690, 810));
        assertThat(value(v.sdann())).isCloseTo(0, within(1e-9));
        assertThat(value(v.sdnnIndex())).isCloseTo((10 + 60) / 2.0, within(0.1));
        var steps =
                of(
                        AnalysisSettings.DEFAULT,
                        alternating(400, 750, 750),
                        alternating(375, 800, 800));
        assertThat(value(steps.sdann())).isCloseTo(50 / Math.sqrt(2), within(0.01));
        assertThat(value(steps.sdnnIndex())).isCloseTo(0, within(0.01));
    }

    /** Intervals that begin with the segment's first second. */
    private static double[] alternating(int count, double one, double other) {
        return IntStream.range(0, count).mapToDouble(i -> i % 2 == 0 ? one : other).toArray();
    }

    private static Variability of(AnalysisSettings settings, double[]... segments) {
        return measured(
                settings, Arrays.stream(segments).flatMapToDouble(Arrays::stream).toArray());
    }

    @Test
    void a_segment_half_empty_is_left_out() {
        var v =
                of(
                        AnalysisSettings.DEFAULT,
                        alternating(400, 740, 760),
                        alternating(190, 690, 810));
        assertThat(v.sdann().refusal()).hasValueSatisfying(r -> assertThat(r).startsWith("1 seg"));
        assertThat(value(v.sdnnIndex())).isCloseTo(10, within(0.1));
    }

    /** Bins of 1/128 s from zero: the one from 796.9 to 804.7 ms holds three of the six. */
    @Test
    void the_triangular_index_is_the_number_over_the_highest_bin() {
        assertThat(value(of(800, 805, 812, 790, 802, 801).triangularIndex())).isEqualTo(2);
    }

    /** Five minutes, and twenty for geometric measures (Task Force 1996). */
    @Test
    void what_is_too_short_is_refused_with_how_much_there_is_and_is_needed() {
        var v = of(AnalysisSettings.DEFAULT, alternating(399, 749, 751));
        assertThat(v.sdnn().refusal().orElseThrow()).contains("299 s").contains("300 s are needed");
        assertThat(v.rmssd().value()).isEmpty();
        assertThat(v.triangularIndex().refusal().orElseThrow()).contains("1200 s are needed");
        assertThat(of(AnalysisSettings.DEFAULT, alternating(401, 749, 751)).sdnn().value())
                .isPresent();
    }

    /** The same five intervals at calculatorlib.com (RMSSD calculator): 14.36, and 7.07 with n. */
    @Test
    void a_public_calculator_gives_the_same() {
        var v = of(800, 810, 790, 805, 795);
        assertThat(value(v.rmssd())).isCloseTo(14.36, within(0.005));
        assertThat(value(v.sdnn()) * Math.sqrt(4 / 5.0)).isCloseTo(7.07, within(0.005));
    }

    /**
     * tests/test_classical.py of the Python package hrv (Bartels, github.com/rhenanbartels/hrv):
     * two digits, cut off. pNN50 is 33.33 there in 2016; since 2017 it is 25, of intervals instead
     * of differences.
     */
    @Test
    void four_intervals_published_with_the_python_package_hrv() {
        var v = of(800, 810, 815, 750);
        assertThat(value(v.sdnn())).isCloseTo(29.82, within(0.01));
        assertThat(value(v.rmssd())).isCloseTo(38.07, within(0.01));
        assertThat(value(v.pnn50())).isCloseTo(33.33, within(0.005));
    }

    /**
     * Example of systole.hrv.rmssd in the documentation of Systole (since 2020,
     * github.com/embodied-computation-group/systole).
     */
    @Test
    void four_intervals_published_with_systole() {
        assertThat(value(of(800, 850, 810, 720).rmssd()))
                .isCloseTo(63.77042156569664, within(1e-9));
    }
}

package dev.isoline.ecg.rhythm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Measure;
import dev.isoline.ecg.summary.Threshold;
import dev.isoline.ecg.summary.Variability;
import org.junit.jupiter.api.Test;

/** Definitions: Task Force ESC/NASPE, Eur Heart J 1996;17:354-381. Values computed by hand. */
class HeartRateVariabilityTest {

    /** Settings under which five intervals are enough. */
    private static final AnalysisSettings SHORT =
            AnalysisSettings.DEFAULT
                    .with(Threshold.HRV_SHORTEST, 0)
                    .with(Threshold.HRV_GEOMETRIC, 0);

    private static Variability of(AnalysisSettings settings, double... nn) {
        var variability = new HeartRateVariability(settings);
        double at = 0;
        for (double interval : nn) {
            variability.add(at, interval);
            at += Double.isNaN(interval) ? 0 : interval / 1000;
        }
        return variability.measures();
    }

    private static Variability of(double... nn) {
        return of(SHORT, nn);
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
}

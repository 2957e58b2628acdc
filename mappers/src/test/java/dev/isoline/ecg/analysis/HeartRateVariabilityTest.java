package dev.isoline.ecg.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Definitions: Task Force ESC/NASPE, Eur Heart J 1996;17:354-381. Values computed by hand. */
class HeartRateVariabilityTest {

    private static Summary.Variability of(double... nn) {
        var variability = new HeartRateVariability();
        for (double interval : nn) {
            variability.add(interval);
        }
        return variability.measures().orElseThrow();
    }

    @Test
    void five_intervals_worked_by_hand() {
        var v = of(800, 810, 790, 805, 795);
        assertThat(v.intervals()).isEqualTo(5);
        assertThat(v.sdnn()).isCloseTo(7.906, within(0.0005));
        assertThat(v.rmssd()).isCloseTo(Math.sqrt(825 / 4.0), within(1e-9));
        assertThat(v.pnn50()).isZero();
    }

    @Test
    void an_interval_between_other_beats_breaks_the_differences() {
        var v = of(800, 860, Intervals.NONE, 1000, 1010);
        assertThat(v.intervals()).isEqualTo(4);
        assertThat(v.rmssd()).isCloseTo(Math.sqrt((3600 + 100) / 2.0), within(1e-9));
        assertThat(v.pnn50()).isEqualTo(50);
    }

    @Test
    void a_difference_of_exactly_50_ms_is_not_over_50() {
        assertThat(of(800, 850).pnn50()).isZero();
    }

    @Test
    void one_interval_has_no_variability() {
        var one = new HeartRateVariability();
        one.add(800);
        assertThat(one.measures()).isEmpty();
    }
}

package dev.isoline.ecg.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.RecordingException;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Detection on signals whose beats are known because the test put them there. */
class DetectionTest {

    private static void assertFound(List<Beat> found, double hz, double... times) {
        assertThat(found).hasSize(times.length);
        for (int i = 0; i < times.length; i++) {
            assertThat(found.get(i).sample() / hz).isBetween(times[i] - 0.012, times[i] + 0.012);
        }
    }

    @ParameterizedTest(name = "{0} Hz, {1} /min, {2} mV, noise {3} mV")
    @CsvSource({
        "100, 60, 1, 0", "125, 75, 1, 0.02", "200, 30, 1, 0.02", "250, 220, 1, 0.02",
        "256, 75, 0.3, 0.01", "360, 75, 3, 0.05", "500, 150, 1, 0.05", "1000, 60, 1, 0.05"
    })
    void beats_are_found_at_every_rate_height_and_sampling_frequency(
            double hz, double rate, double millivolts, double noise) throws IOException {
        var times = SyntheticEcg.regular(60, 60 / rate);
        var ecg = new SyntheticEcg(hz, 60, times).lead(millivolts, noise).cut();
        assertFound(Analysis.detect(ecg), hz, times);
    }

    @Test
    void a_beat_of_a_third_of_the_height_is_found_by_searching_back() throws IOException {
        var times = SyntheticEcg.regular(30, 0.8);
        var low = new SyntheticEcg(250, 30, times[20]).lead(0.3, 0);
        var others = Arrays.stream(times).filter(t -> t != times[20]).toArray();
        var ecg = new SyntheticEcg(250, 30, others).lead(1, 0).add(low).cut();
        assertFound(Analysis.detect(ecg), 250, times);
    }

    @Test
    void a_step_of_the_baseline_is_no_beat() throws IOException {
        var times = SyntheticEcg.regular(30, 1);
        var ecg = new SyntheticEcg(250, 30, times).lead(1, 0.01).raise(10.05, 2).cut();
        assertFound(Analysis.detect(ecg), 250, times);
    }

    @Test
    void while_the_first_lead_is_off_the_second_is_used() throws IOException {
        var times = SyntheticEcg.regular(60, 0.8);
        var ecg =
                new SyntheticEcg(250, 60, times).lead(1, 0.01).hold(20, 40, 4).lead(1, 0.01).cut();
        var detection = Detection.in(ecg);
        assertFound(detection.beats(), 250, times);
        assertThat(detection.leads()).containsExactly("lead 1", "lead 2");
        assertThat(detection.unusableSeconds().isEmpty()).isTrue();
    }

    @Test
    void a_sampling_frequency_too_low_for_beats_is_refused() {
        var ecg = new SyntheticEcg(50, 10, 1, 2).lead(1, 0).cut();
        assertThatThrownBy(() -> Detection.in(ecg))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining("100 to 4000");
    }
}

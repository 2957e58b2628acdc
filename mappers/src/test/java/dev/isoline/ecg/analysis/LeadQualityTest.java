package dev.isoline.ecg.analysis;

import static dev.isoline.ecg.summary.Disturbance.BURIED;
import static dev.isoline.ecg.summary.Disturbance.LEAD_OFF;
import static dev.isoline.ecg.summary.Disturbance.MAINS;
import static dev.isoline.ecg.summary.Disturbance.MUSCLE;
import static dev.isoline.ecg.summary.Disturbance.SATURATED;
import static dev.isoline.ecg.summary.Disturbance.WANDER;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.summary.LeadReport;
import dev.isoline.ecg.summary.MinuteQuality;
import java.time.Duration;
import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Signals made of parts whose heights are known; measures and limits: docs/quality.md. */
class LeadQualityTest {

    private static final double UNIT = 5;
    private static final Lead LEAD = new Lead("II", UNIT, 0, 12);

    /** A QRS complex of 1 mV and its T wave every 0.8 s. */
    private static double heart(double t) {
        double at = t % 0.8 - 0.4;
        return Math.exp(-Math.pow(at / 0.011, 2) / 2)
                + 0.3 * Math.exp(-Math.pow((at - 0.25) / 0.05, 2) / 2);
    }

    private static DoubleUnaryOperator sine(double hz, double millivolts) {
        return t -> millivolts * Math.sin(2 * Math.PI * hz * t);
    }

    /** White noise, standard deviation in millivolts. */
    private static DoubleUnaryOperator white(double millivolts) {
        var random = new Random(11);
        return t -> millivolts * random.nextGaussian();
    }

    private static DoubleUnaryOperator from(double begin, double end, DoubleUnaryOperator what) {
        return t -> t >= begin && t < end ? what.applyAsDouble(t) : 0;
    }

    private static int[] sum(double hz, double seconds, DoubleUnaryOperator... parts) {
        var samples = new int[(int) Math.round(seconds * hz)];
        for (int i = 0; i < samples.length; i++) {
            double t = i / hz;
            double millivolts = Arrays.stream(parts).mapToDouble(p -> p.applyAsDouble(t)).sum();
            samples[i] = (int) Math.round(millivolts * 1000 / UNIT);
        }
        return samples;
    }

    private static LeadQuality judged(double hz, int[] samples) {
        var quality = new LeadQuality(LEAD, hz);
        for (int at = 0; at < samples.length; at += 333) {
            int end = Math.min(samples.length, at + 333);
            quality.take(at, Arrays.copyOfRange(samples, at, end));
        }
        quality.finish();
        return quality;
    }

    private static LeadReport report(double hz, int[] samples) {
        return judged(hz, samples).report();
    }

    private static MinuteQuality.Levels levels(LeadReport report, int minute) {
        return report.minutes().get(minute).levels().orElseThrow();
    }

    private static int[] held(int[] samples, double hz, double from, double to, int value) {
        Arrays.fill(samples, (int) (from * hz), (int) (to * hz), value);
        return samples;
    }

    @ParameterizedTest
    @ValueSource(doubles = {100, 125, 128, 250, 360, 500, 999.5, 1000})
    void a_clean_lead_is_usable_throughout_and_its_amplitude_is_known(double hz) {
        var report = report(hz, sum(hz, 180, LeadQualityTest::heart));
        assertThat(report.recorded()).isEqualTo(report.usable()).isEqualTo(Duration.ofMinutes(3));
        assertThat(report.disturbed()).isEmpty();
        assertThat(report.amplitude().orElseThrow()).isCloseTo(1000, within(50.0));
        assertThat(report.minutes()).hasSize(3);
    }

    @ParameterizedTest
    @CsvSource({"50, 128", "50, 250", "50.1, 360", "60, 250", "60, 360", "60, 1000"})
    void hum_is_measured_and_not_taken_for_muscle_noise(double frequency, double hz) {
        var samples = sum(hz, 60, LeadQualityTest::heart, sine(frequency, 0.2), white(0.005));
        var report = report(hz, samples);
        assertThat(levels(report, 0).mains()).isCloseTo(200, within(20));
        assertThat(report.disturbed()).containsOnlyKeys(MAINS);
        assertThat(report.disturbed()).containsEntry(MAINS, Duration.ofMinutes(1));
        assertThat(report.usableShare()).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(doubles = {100, 125, 250, 360, 500, 1000})
    void muscle_noise_is_measured_between_the_beats(double hz) {
        var report = report(hz, sum(hz, 60, LeadQualityTest::heart, white(0.06)));
        assertThat(levels(report, 0).muscle()).isCloseTo(60, within(6));
        assertThat(report.disturbed()).containsOnlyKeys(MUSCLE);
        assertThat(report.usableShare()).isEqualTo(1);
    }

    @Test
    void wander_is_measured_from_peak_to_peak() {
        var report = report(250, sum(250, 60, LeadQualityTest::heart, sine(0.2, 0.4)));
        assertThat(levels(report, 0).wander()).isCloseTo(800, within(100));
        assertThat(report.disturbed()).containsOnlyKeys(WANDER);
    }

    @Test
    void noise_just_under_a_limit_is_no_disturbance() {
        var report =
                report(
                        250,
                        sum(
                                250,
                                60,
                                LeadQualityTest::heart,
                                sine(50, 0.04),
                                sine(0.1, 0.15),
                                white(0.015)));
        assertThat(report.disturbed()).isEmpty();
    }

    @Test
    void noise_that_buries_the_beats_makes_its_seconds_unusable() {
        var noise = from(20, 30, white(0.6));
        var quality = judged(250, sum(250, 120, LeadQualityTest::heart, noise));
        assertThat(quality.unusableSeconds().stream()).containsExactlyInAnyOrder(seconds(20, 30));
        assertThat(quality.report().disturbed()).containsEntry(BURIED, Duration.ofSeconds(10));
        assertThat(quality.report().amplitude().orElseThrow()).isCloseTo(1000, within(50.0));
    }

    @Test
    void a_lead_of_nothing_but_noise_is_unusable() {
        var report = report(250, sum(250, 60, white(0.1)));
        assertThat(report.usableShare()).isLessThan(0.05);
    }

    @Test
    void a_pause_in_a_noisy_lead_stays_usable() {
        var pause = from(20, 30, t -> -heart(t));
        var report = report(250, sum(250, 60, LeadQualityTest::heart, pause, white(0.05)));
        assertThat(report.usableShare()).isEqualTo(1);
    }

    @Test
    void missing_samples_are_a_lead_off_in_every_second_they_touch() {
        var samples = held(sum(250, 60, LeadQualityTest::heart), 250, 20.5, 24, Block.MISSING);
        var quality = judged(250, samples);
        assertThat(quality.unusableSeconds().stream()).containsExactlyInAnyOrder(seconds(20, 24));
        assertThat(quality.report().disturbed()).containsOnlyKeys(LEAD_OFF);
        assertThat(quality.report().minutes().get(0).usable()).isEqualTo(56);
    }

    @Test
    void the_end_of_the_range_is_saturation_for_moments_and_lead_off_for_longer() {
        var samples = held(sum(250, 60, LeadQualityTest::heart), 250, 10, 13, 2047);
        var report = report(250, held(samples, 250, 30, 50, 2047));
        assertThat(report.disturbed())
                .containsEntry(SATURATED, Duration.ofSeconds(3))
                .containsEntry(LEAD_OFF, Duration.ofSeconds(20));
        assertThat(report.usable()).isEqualTo(Duration.ofSeconds(37));
    }

    @Test
    void complexes_that_are_cut_off_are_saturation_but_usable() {
        var samples = sum(250, 60, t -> 20 * heart(t));
        Arrays.setAll(samples, i -> Math.min(1000, samples[i]));
        var report = report(250, samples);
        assertThat(report.disturbed().get(SATURATED)).isGreaterThan(Duration.ofSeconds(40));
        assertThat(report.usableShare()).isEqualTo(1);
    }

    @Test
    void a_lead_that_hardly_moves_for_20_s_is_off() {
        var quiet = from(20, 50, t -> -heart(t));
        var report = report(250, sum(250, 60, LeadQualityTest::heart, quiet, white(0.002)));
        assertThat(report.disturbed()).containsEntry(LEAD_OFF, Duration.ofSeconds(30));
    }

    @Test
    void an_asystole_of_10_s_on_a_quiet_lead_stays_usable() {
        var pause = from(20, 30, t -> -heart(t));
        var report = report(250, sum(250, 60, LeadQualityTest::heart, pause, white(0.002)));
        assertThat(report.usableShare()).isEqualTo(1);
    }

    @Test
    void a_gap_is_not_recorded_and_holds_nothing() {
        var samples = sum(250, 60, LeadQualityTest::heart);
        var quality = new LeadQuality(LEAD, 250);
        quality.take(0, Arrays.copyOfRange(samples, 0, 2600));
        quality.take(30_130, samples);
        quality.finish();
        var report = quality.report();
        assertThat(report.recorded()).isEqualTo(Duration.ofSeconds(11 + 61));
        assertThat(report.usableShare()).isEqualTo(1);
        assertThat(report.minutes())
                .extracting(MinuteQuality::recorded)
                .containsExactly(11, 0, 60, 1);
        assertThat(report.minutes().get(1).levels()).isEmpty();
    }

    @Test
    void a_lead_without_calibration_has_no_microvolts() {
        var quality = new LeadQuality(new Lead("?", 0, 0, 12), 250);
        quality.take(0, sum(250, 60, LeadQualityTest::heart));
        quality.finish();
        assertThat(quality.report().amplitude()).isEmpty();
        assertThat(quality.report().minutes().get(0).levels()).isEmpty();
    }

    private static Integer[] seconds(int from, int to) {
        return IntStream.range(from, to).boxed().toArray(Integer[]::new);
    }
}

package dev.isoline.ecgdicom.iod;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Stretch;
import dev.isoline.ecg.summary.HeartRates;
import dev.isoline.ecgdicom.MadeFindings;
import dev.isoline.ecgdicom.StripSettings;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Which seconds of a recording become an object of their own (common practice, no source). */
class StripPlanTest {

    private final MadeFindings made = new MadeFindings().recorded(0, 100_000);

    private List<Strip> plan(int most) {
        return StripPlan.of(made.build(), new StripSettings(most, Duration.ofSeconds(10)));
    }

    @Test
    void the_longest_interval_lies_in_the_middle_of_ten_seconds() {
        made.longestRr = Optional.of(made.interval(50_000, 50_600));
        assertThat(plan(12)).hasSize(1);
        assertThat(plan(12).get(0).window()).isEqualTo(new Stretch(49_300, 51_300));
        assertThat(plan(12).get(0).reasons()).containsExactly("longest RR interval");
    }

    @Test
    void a_strip_does_not_reach_over_the_edge_of_its_block() {
        made.recorded(200_000, 201_000);
        made.longestRr = Optional.of(made.interval(100, 600));
        made.pauses.add(made.interval(99_500, 99_990));
        made.pauses.add(made.interval(200_100, 200_500));
        assertThat(plan(12))
                .extracting(Strip::window)
                .containsExactly(
                        new Stretch(0, 2_000),
                        new Stretch(98_000, 100_000),
                        new Stretch(200_000, 201_000));
    }

    @Test
    void what_a_strip_already_shows_gets_no_second_one() {
        made.longestRr = Optional.of(made.interval(50_000, 50_600));
        made.pauses.add(made.interval(50_000, 50_600));
        made.pauses.add(made.interval(50_700, 51_150));
        assertThat(plan(12)).hasSize(1);
        assertThat(plan(12).get(0).reasons()).containsExactly("longest RR interval", "pause");
    }

    @Test
    void there_are_as_many_as_the_settings_allow_and_the_longest_pauses_first() {
        for (int i = 1; i < 30; i++) {
            made.pauses.add(made.interval(3_000L * i, 3_000L * i + 400 + i));
        }
        assertThat(plan(0)).isEmpty();
        assertThat(plan(3))
                .extracting(strip -> strip.window().from() / 3_000)
                .containsExactly(26L, 27L, 28L);
    }

    @Test
    void runs_of_three_and_more_beats_of_a_class_and_the_extreme_rates_are_shown() {
        for (int i = 0; i < 400; i++) {
            boolean run = i >= 100 && i < 103 || i >= 300 && i < 305;
            boolean pair = i == 200 || i == 201;
            made.beat(200L * i, run || pair ? Beat.Kind.V : Beat.Kind.N);
        }
        made.rate =
                Optional.of(new HeartRates.Rate(60, 50, made.time(2_000), 70, made.time(76_000)));
        assertThat(plan(3))
                .extracting(Strip::reasons)
                .containsExactly(
                        List.of("lowest heart rate"),
                        List.of("ventricular run"),
                        List.of("highest heart rate"));
        assertThat(plan(3).get(1).window()).isEqualTo(new Stretch(59_400, 61_400));
        assertThat(plan(12)).hasSize(4);
    }
}

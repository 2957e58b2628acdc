package dev.isoline.ecg.summary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The table of thresholds, its page, and what settings make of it. */
class ThresholdTest {

    @ParameterizedTest(name = "{0}")
    @EnumSource
    void the_page_has_a_row_for_every_threshold(Threshold threshold) throws Exception {
        String row =
                String.join(
                        " | ",
                        "| `" + threshold.key() + "`",
                        plain(threshold.standard()),
                        unit(threshold),
                        plain(threshold.least()),
                        plain(threshold.most()),
                        threshold.source() + " |");
        assertThat(Files.readAllLines(Path.of("../docs/analysis.md")))
                .contains(row.replace("|  |", "| |"));
    }

    private static String unit(Threshold threshold) {
        return switch (threshold.unit()) {
            case SECONDS -> "s";
            case MILLISECONDS -> "ms";
            case PER_MINUTE -> "/min";
            case PERCENT -> "%";
            case NONE -> "";
        };
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
    }

    @ParameterizedTest(name = "{0}")
    @EnumSource
    void a_default_is_within_its_limits(Threshold threshold) {
        assertThat(threshold.standard()).isBetween(threshold.least(), threshold.most());
    }

    @Test
    void settings_by_name_keep_the_other_defaults() {
        var settings = AnalysisSettings.of(Map.of("vt-rate", 120.0, "pause", 2.5));
        assertThat(settings.value(Threshold.VT_RATE)).isEqualTo(120);
        assertThat(settings.duration(Threshold.PAUSE)).isEqualTo(Duration.ofMillis(2500));
        assertThat(settings.count(Threshold.RUN_BEATS)).isEqualTo(3);
        assertThat(AnalysisSettings.of(Map.of())).isEqualTo(AnalysisSettings.DEFAULT);
    }

    @Test
    void what_is_unknown_or_out_of_range_is_named() {
        assertThatThrownBy(() -> AnalysisSettings.of(Map.of("vt-speed", 1.0)))
                .hasMessage("There is no threshold vt-speed.");
        assertThatThrownBy(() -> AnalysisSettings.of(Map.of("vt-rate", 1000.0)))
                .hasMessage("The threshold vt-rate takes 30 to 400.");
        assertThatThrownBy(() -> AnalysisSettings.of(Map.of("vt-rate", Double.NaN)))
                .hasMessageContaining("vt-rate");
    }
}

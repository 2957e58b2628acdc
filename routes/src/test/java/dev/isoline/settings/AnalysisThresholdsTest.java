package dev.isoline.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Threshold;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.springframework.boot.context.properties.bind.Binder;
import org.springframework.boot.context.properties.source.MapConfigurationPropertySource;

/** Thresholds of the analysis in the configuration file, by docs/configuration.md. */
class AnalysisThresholdsTest {

    private static AnalysisSettings settings(Map<String, String> file) {
        return new Binder(new MapConfigurationPropertySource(file))
                .bindOrCreate("isoline", IsolineProperties.class)
                .recordings()
                .analysis();
    }

    @Test
    void a_threshold_is_set_by_its_name_and_the_others_keep_their_defaults() {
        var settings =
                settings(
                        Map.of(
                                "isoline.recordings.thresholds.vt-rate", "120",
                                "isoline.recordings.pause", "2500ms"));
        assertThat(settings.value(Threshold.VT_RATE)).isEqualTo(120);
        assertThat(settings.value(Threshold.PAUSE)).isEqualTo(2.5);
        assertThat(settings.value(Threshold.AF_DURATION)).isEqualTo(30);
    }

    @Test
    void without_settings_the_published_defaults_hold() {
        assertThat(settings(Map.of())).isEqualTo(AnalysisSettings.DEFAULT);
    }

    @Test
    void an_unknown_name_is_told() {
        assertThatThrownBy(() -> settings(Map.of("isoline.recordings.thresholds.vt-speed", "1")))
                .hasMessage("There is no threshold vt-speed.");
    }
}

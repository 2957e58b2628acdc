package dev.isoline.conformance.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.synth.Truth;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoRecordingsTest {

    @TempDir private Path root;

    @Test
    void the_recordings_hold_what_the_story_says() throws Exception {
        DemoFolder folder = DemoFolder.prepare(root);
        Truth first = DemoRecordings.harrowBay(folder).truth();
        assertThat(first.supraventricular()).isEqualTo(1);
        assertThat(first.pauses()).hasSize(1);
        assertThat(first.longestRr()).isCloseTo(2600, within(4.0));
        assertThat(first.meanRate()).isBetween(70.0, 76.0);

        Truth second = DemoRecordings.sablePoint(folder).truth();
        assertThat(second.ventricular()).isEqualTo(12);
        assertThat(second.supraventricular()).isEqualTo(7);
        assertThat(second.pauses()).hasSize(1);
        assertThat(folder.path("recordings/SP-2002.zip")).isNotEmptyFile();
    }
}

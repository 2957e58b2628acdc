package dev.isoline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingHeader;
import dev.isoline.ecg.RecordingHeader.Identity;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.lang.reflect.Modifier;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ProgressTest {

    private final StringWriter err = new StringWriter();
    private long nanos;

    private Progress progress(boolean terminal) {
        return new Progress(new PrintWriter(err), terminal, () -> nanos);
    }

    private static RecordingHeader header(long samples) {
        return new RecordingHeader(
                "EDF", Identity.NONE, Optional.empty(), 200, List.of(), samples, "", List.of());
    }

    /** A reader hands out a block about each millisecond; 3.5 seconds pass. */
    @Test
    void it_speaks_once_a_second_and_not_in_the_first() {
        var progress = progress(false);
        for (int block = 1; block <= 3_500; block++) {
            nanos += 1_000_000;
            progress.read(block * 720_000L / 1_000, header(2_880_000));
        }
        progress.end();
        assertThat(err.toString().lines())
                .containsExactly(
                        "read 1 h 00 min of 4 h 00 min, 25 %",
                        "read 2 h 00 min of 4 h 00 min, 50 %",
                        "read 3 h 00 min of 4 h 00 min, 75 %");
    }

    @Test
    void a_recording_that_does_not_tell_its_length_has_no_percentage() {
        nanos = 0;
        var progress = progress(false);
        nanos = 1_000_000_000;
        progress.read(200 * 60 * 90, header(-1));
        assertThat(err.toString().lines()).containsExactly("read 1 h 30 min");
    }

    @Test
    void a_terminal_has_one_line_that_is_wiped_at_the_end() {
        var progress = progress(true);
        nanos = 1_000_000_000;
        progress.read(200 * 60, header(-1));
        progress.end();
        assertThat(err.toString())
                .startsWith("\rread 0 h 01 min")
                .endsWith("\r" + " ".repeat(15) + "\r")
                .doesNotContain("\n");
    }

    /** What a reader adds to the interface would be lost on the way. */
    @Test
    void a_watched_recording_hands_on_all_that_a_recording_has() {
        assertThat(Arrays.stream(Recording.class.getMethods()))
                .filteredOn(method -> !Modifier.isStatic(method.getModifiers()))
                .allSatisfy(
                        method ->
                                assertThat(
                                                WatchedRecording.class
                                                        .getMethod(
                                                                method.getName(),
                                                                method.getParameterTypes())
                                                        .getDeclaringClass())
                                        .isEqualTo(WatchedRecording.class));
    }
}

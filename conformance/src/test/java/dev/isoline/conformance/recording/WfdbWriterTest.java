package dev.isoline.conformance.recording;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.conformance.IndependentReader;
import dev.isoline.synth.EcgPlan;
import dev.isoline.synth.RecordingFile;
import dev.isoline.synth.Synthesiser;
import dev.isoline.synth.WfdbSamples;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Read back by numpy as WFDB header(5), signal(5) and annot(5) say. */
class WfdbWriterTest {

    @ParameterizedTest
    @EnumSource(WfdbSamples.class)
    void an_independent_reader_finds_checksums_samples_and_beats(
            WfdbSamples format, @TempDir Path folder) throws Exception {
        Path raw = folder.resolve("r.raw");
        var ecg = new Synthesiser(SamplePlans.ECTOPIC);
        var start = LocalDateTime.of(2026, 11, 2, 9, 30);
        var files = RecordingFile.wfdb(ecg, SamplePlans.ECTOPIC, format, start, folder, "r1", raw);
        assertThat(IndependentReader.run("read_wfdb.py", files.get(0), raw))
                .isEqualTo("True|True|True|" + beats(ecg));
    }

    private static String beats(Synthesiser ecg) {
        return ecg.beats().stream()
                .map(b -> b.sample() + ":" + b.kind().wfdbCode())
                .collect(Collectors.joining(" "));
    }

    @ParameterizedTest
    @EnumSource(WfdbSamples.class)
    void a_step_over_1023_samples_is_written_with_skip(WfdbSamples format, @TempDir Path folder)
            throws Exception {
        EcgPlan plan = SamplePlans.ECTOPIC;
        var pause = new EcgPlan.Pause(30, 5);
        var longer =
                new EcgPlan(
                        plan.hz(),
                        plan.seconds(),
                        List.of("MLII"),
                        plan.seed(),
                        plan.rate(),
                        plan.ventricular(),
                        plan.supraventricular(),
                        pause,
                        plan.noise());
        Path raw = folder.resolve("r.raw");
        var ecg = new Synthesiser(longer);
        var files =
                RecordingFile.wfdb(
                        ecg, longer, format, LocalDateTime.of(2026, 1, 1, 0, 0), folder, "r2", raw);
        assertThat(IndependentReader.run("read_wfdb.py", files.get(0), raw))
                .isEqualTo("True|True|True|" + beats(ecg));
    }
}

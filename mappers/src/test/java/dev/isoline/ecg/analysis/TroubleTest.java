package dev.isoline.ecg.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Disturbance;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.LeadReport;
import dev.isoline.synth.BeatKind;
import dev.isoline.synth.EcgPlan;
import dev.isoline.synth.Noise;
import dev.isoline.synth.Span;
import dev.isoline.synth.Synthesiser;
import dev.isoline.synth.Trouble;
import java.io.IOException;
import java.time.Duration;
import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Troubles of single leads that the synthesiser made are reported as long as they lasted. */
class TroubleTest {

    private static final Span OFF = new Span(20, 32);
    private static final Span AT_THE_END = new Span(50, 53);
    private static final Span LOUD = new Span(70, 82);

    private static EcgPlan plan(int hz) {
        return EcgPlan.steady(hz, 120, 75).with(Noise.AMBULATORY);
    }

    private static Trouble[] troubles(int lead) {
        return new Trouble[] {
            new Trouble(Trouble.Kind.OFF, lead, OFF, 0),
            new Trouble(Trouble.Kind.SATURATED, lead, AT_THE_END, 0),
            new Trouble(Trouble.Kind.MUSCLE, lead, LOUD, 0.6)
        };
    }

    private static void assertReported(LeadReport lead) {
        assertSeconds(lead.disturbed().get(Disturbance.LEAD_OFF), OFF);
        assertSeconds(lead.disturbed().get(Disturbance.SATURATED), AT_THE_END);
        assertSeconds(lead.disturbed().get(Disturbance.BURIED), LOUD);
        assertThat(lead.usable().toSeconds()).isCloseTo(120 - 12 - 3 - 12, within(2L));
    }

    private static void assertSeconds(Duration found, Span truth) {
        double seconds = truth.to() - truth.from();
        assertThat((double) found.toSeconds()).isCloseTo(seconds, within(1.0));
    }

    @ParameterizedTest
    @ValueSource(ints = {125, 250, 360, 1000})
    void of_one_lead_take_no_beat_while_the_other_is_well(int hz) throws IOException {
        var plan = plan(hz).with(troubles(0));
        var ecg = new Synthesiser(plan);
        var findings = Analysis.findings(new SynthesisedRecording(plan), AnalysisSettings.DEFAULT);
        var score = new BeatScore(BeatKind.VENTRICULAR, Beat.Kind.V);
        score.add(findings.beats(), ecg.beats(), hz);
        assertThat(score.missed() + score.wrong()).as("%s", score).isLessThanOrEqualTo(1);
        var coverage = findings.summary().coverage();
        assertReported(coverage.leads().get(0));
        assertThat(coverage.leads().get(1).usableShare()).isEqualTo(1);
        assertThat(coverage.analysable()).isEqualTo(Duration.ofMinutes(2));
    }

    @ParameterizedTest
    @ValueSource(ints = {125, 250, 360, 1000})
    void of_all_leads_are_not_analysable_and_no_pause(int hz) throws IOException {
        var both = Arrays.asList(troubles(0), troubles(1)).stream().flatMap(Arrays::stream);
        var plan = plan(hz).with(both.toArray(Trouble[]::new));
        var ecg = new SynthesisedRecording(plan);
        var summary = Analysis.summarise(ecg, AnalysisSettings.DEFAULT);
        summary.coverage().leads().forEach(TroubleTest::assertReported);
        assertThat(summary.coverage().analysable().toSeconds()).isCloseTo(93, within(3L));
        assertThat(summary.rhythm().of(EpisodeKind.PAUSE)).isEmpty();
        assertThat(summary.rates().whole().orElseThrow().mean()).isCloseTo(75, within(1.0));
    }
}

package dev.isoline.ecg.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.synth.BeatKind;
import dev.isoline.synth.Span;
import dev.isoline.synth.Synthesiser;
import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Ectopic beats and fibrillation that the synthesiser made, over a grid of heart rates, heights,
 * noises and sampling rates together: marks as for the records of issue 4.
 */
class ArrhythmiaGridTest {

    private static final int SECONDS = 180;
    private static final int FIBRILLATION_SECONDS = 420;
    private static final Span FIBRILLATION = new Span(60, 360);

    private static final double[] HEIGHTS = {0.5, 1, 3};

    private static Stream<GridCell> cells(double... rates) {
        return GridCell.cells(rates, HEIGHTS, 125, 250, 360);
    }

    /** Every so many beats, the first not at once. */
    private static Set<Integer> every(int step, int first) {
        var numbers = new HashSet<Integer>();
        for (int n = first; n < SECONDS * 4; n += step) {
            numbers.add(n);
        }
        return numbers;
    }

    @Test
    void ectopic_beats_are_told_by_their_class_and_are_no_fibrillation() throws IOException {
        var ventricular = new BeatScore(BeatKind.VENTRICULAR, Beat.Kind.V);
        var supraventricular = new BeatScore(BeatKind.SUPRAVENTRICULAR, Beat.Kind.S);
        for (var cell : cells(50, 75, 100, 125).toList()) {
            var plan = cell.plan(SECONDS).with(every(11, 12), every(23, 17));
            var findings =
                    Analysis.findings(new SynthesisedRecording(plan), AnalysisSettings.DEFAULT);
            var found = findings.beats();
            assertThat(findings.summary().rhythm().of(EpisodeKind.ATRIAL_FIBRILLATION))
                    .as("%s", cell)
                    .isEmpty();
            var beats = new Synthesiser(plan).beats();
            ventricular.add(found, beats, plan.hz());
            supraventricular.add(found, beats, plan.hz());
        }
        assertThat(ventricular.missed() + ventricular.wrong()).as("%s", ventricular).isLessThan(8);
        assertThat(ventricular.sensitivity()).as("%s", ventricular).isGreaterThan(93);
        assertThat(ventricular.predictivity()).as("%s", ventricular).isGreaterThan(95);
        assertThat(supraventricular.sensitivity()).as("%s", supraventricular).isGreaterThan(90);
        assertThat(supraventricular.predictivity()).as("%s", supraventricular).isGreaterThan(90);
    }

    @Test
    void fibrillation_is_found_where_it_was_and_nowhere_else() throws IOException {
        var share = fibrillation(cells(75, 95, 110, 140));
        assertThat(share.sensitivity()).as("duration sensitivity").isGreaterThan(90);
        assertThat(share.predictivity()).as("duration predictivity").isGreaterThan(95);
    }

    /** It takes some thirty intervals to be sure: half a minute at either end. */
    @Test
    void of_slow_fibrillation_the_middle_is_found() throws IOException {
        var share = fibrillation(cells(50, 60));
        assertThat(share.sensitivity()).as("duration sensitivity").isGreaterThan(55);
        assertThat(share.predictivity()).as("duration predictivity").isGreaterThan(95);
    }

    /** Seconds of fibrillation that was, that was found, and that was both. */
    private record Share(double truth, double found, double both) {

        double sensitivity() {
            return 100 * both / truth;
        }

        double predictivity() {
            return 100 * both / found;
        }
    }

    private static Share fibrillation(Stream<GridCell> cells) throws IOException {
        double truth = 0;
        double found = 0;
        double both = 0;
        for (var cell : cells.toList()) {
            var plan = cell.plan(FIBRILLATION_SECONDS).with(FIBRILLATION);
            for (var episode : fibrillation(new SynthesisedRecording(plan))) {
                double from = episode.start().toMillis() / 1000.0;
                double to = episode.end().toMillis() / 1000.0;
                found += to - from;
                both +=
                        Math.max(
                                0,
                                Math.min(to, FIBRILLATION.to())
                                        - Math.max(from, FIBRILLATION.from()));
            }
            truth += FIBRILLATION.to() - FIBRILLATION.from();
        }
        return new Share(truth, found, both);
    }

    private static List<Episode> fibrillation(SynthesisedRecording ecg) throws IOException {
        return Analysis.summarise(ecg, AnalysisSettings.DEFAULT)
                .rhythm()
                .of(EpisodeKind.ATRIAL_FIBRILLATION);
    }
}

package dev.isoline.ecgfhir;

import static dev.isoline.ecgfhir.EctopyMetric.Aspect.*;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.BeatCounts;
import dev.isoline.ecg.summary.Ectopy;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.Episode.Rates;
import dev.isoline.ecgfhir.EctopyMetric.Aspect;
import dev.isoline.ecgfhir.EctopyMetric.Origin;
import java.time.Duration;
import java.util.Optional;
import org.hl7.fhir.r4.model.Observation;

/** What is told of the ectopic beats of one origin; without a run there are no rows for one. */
final class EctopyPanel {

    private static final Absence NO_TIME = Absence.unknown("No time could be analysed.");
    private static final Absence NO_RATE = Absence.unknown("No rate could be measured.");
    private static final Absence NOT_COUNTED = Absence.notPerformed("It was not counted.");

    private final Origin origin;
    private final Panel panel;
    private final TimeAxis time;

    private EctopyPanel(Origin origin, ObservationFrame frame, TimeAxis time) {
        this.origin = origin;
        this.panel = frame.panel(metric(PANEL));
        this.time = time;
    }

    static Observation ventricular(BeatCounts beats, ObservationFrame frame, TimeAxis time) {
        return new EctopyPanel(Origin.VENTRICULAR, frame, time)
                .observation(beats, Beat.Kind.V, beats.ventricular());
    }

    static Observation supraventricular(BeatCounts beats, ObservationFrame frame, TimeAxis time) {
        return new EctopyPanel(Origin.SUPRAVENTRICULAR, frame, time)
                .observation(beats, Beat.Kind.S, beats.supraventricular());
    }

    private Observation observation(BeatCounts beats, Beat.Kind kind, Optional<Ectopy> found) {
        var absence = beats.classified().isEmpty() ? Absence.UNCLASSIFIED : NOT_COUNTED;
        var counted = BeatPanel.count(beats, kind);
        with(COUNT, found.map(e -> (double) e.beats()).or(() -> counted), 0, absence);
        with(PER_HOUR, found.flatMap(Ectopy::perHour), 1, found.isEmpty() ? absence : NO_TIME);
        with(SHARE, found.map(Ectopy::percent), 2, absence);
        found.ifPresent(this::details);
        return panel.observation();
    }

    private void details(Ectopy ectopy) {
        ectopy.most().ifPresent(this::most);
        with(COUPLETS, ectopy.couplets());
        with(TRIPLETS, ectopy.triplets());
        with(RUNS, ectopy.runs());
        with(RUN_BEATS, ectopy.runBeats());
        ectopy.longestRun().ifPresent(this::longest);
        ectopy.fastestRun().ifPresent(this::fastest);
        with(BIGEMINY, ectopy.bigeminy().episodes());
        with(BIGEMINY_BEATS, ectopy.bigeminy().ectopic());
        with(TRIGEMINY, ectopy.trigeminy().episodes());
        with(TRIGEMINY_BEATS, ectopy.trigeminy().ectopic());
    }

    private void most(Ectopy.MostInHour most) {
        with(MOST, most.beats());
        at(MOST_TIME, most.from());
    }

    private void longest(Episode run) {
        with(LONGEST_BEATS, run.beats());
        with(LONGEST_DURATION, Optional.of(Units.seconds(run.duration())), 2, NO_TIME);
        with(LONGEST_RATE, run.rates().map(Rates::mean), 0, NO_RATE);
        at(LONGEST_TIME, run.start());
    }

    private void fastest(Episode run) {
        with(FASTEST_RATE, run.rates().map(Rates::mean), 0, NO_RATE);
        with(FASTEST_BEATS, run.beats());
        with(FASTEST_DURATION, Optional.of(Units.seconds(run.duration())), 2, NO_TIME);
        at(FASTEST_TIME, run.start());
    }

    private void with(Aspect aspect, long count) {
        panel.with(metric(aspect), count, 0);
    }

    private void with(Aspect aspect, Optional<Double> value, int decimals, Absence absence) {
        panel.with(metric(aspect), value, decimals, absence);
    }

    private void at(Aspect aspect, Duration offset) {
        panel.at(metric(aspect), time.at(offset));
    }

    private EctopyMetric metric(Aspect aspect) {
        return new EctopyMetric(origin, aspect);
    }
}

package dev.isoline.ecgfhir;

import static dev.isoline.ecgfhir.AmbulatoryEcgMetric.*;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.HeartRates.Interval;
import dev.isoline.ecg.summary.HeartRates.Rate;
import dev.isoline.ecg.summary.Measure;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Threshold;
import dev.isoline.ecg.summary.Variability;
import dev.isoline.ecgfhir.Panel.Absent;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.StringType;

/**
 * What the analysis found, as FHIR R4 Observations: one per topic, and one per pause. Rows and
 * their reasons: docs/mappings/summary-to-observations.md.
 */
public final class SummaryToObservations {

    /** More pauses than a reader goes through say only that the recording is bad. */
    static final int MOST_PAUSES = 100;

    private final Summary summary;
    private final TimeAxis time;
    private final ObservationFrame frame;

    private SummaryToObservations(Summary summary, ReportContext context, Duration span) {
        this.summary = summary;
        this.time = new TimeAxis(summary.coverage().start(), context.zone());
        this.frame = new ObservationFrame(context, time.period(Duration.ZERO, span));
    }

    /**
     * Panels in a fixed order, then the pauses in time order.
     *
     * @param span from the first to the last sample, gaps included
     */
    public static List<Observation> map(Summary summary, ReportContext context, Duration span) {
        return new SummaryToObservations(summary, context, span).map();
    }

    private List<Observation> map() {
        List<Observation> pauses = pauses();
        var all = new ArrayList<Observation>();
        all.add(quality());
        all.add(rate());
        if (!summary.rates().hours().isEmpty()) {
            all.add(HourlyRates.of(summary, frame.panel(HOURLY_PANEL)));
        }
        all.add(ectopy(VE_PANEL, Beat.Kind.V, VE_COUNT, VE_PER_HOUR, VE_SHARE));
        all.add(ectopy(SVE_PANEL, Beat.Kind.S, SVE_COUNT, SVE_PER_HOUR, SVE_SHARE));
        all.add(pausePanel(pauses));
        all.add(variability());
        all.addAll(pauses);
        return all;
    }

    private Observation quality() {
        Panel panel =
                frame.panel(QUALITY_PANEL)
                        .with(RECORDED_TIME, hours(summary.coverage().recorded()), 2)
                        .with(ANALYSABLE_TIME, hours(summary.coverage().analysable()), 2)
                        .with(ANALYSABLE_SHARE, analysableShare(), 1, Absent.UNKNOWN)
                        .with(BEATS, summary.beats().total(), 0);
        if (!summary.coverage().detectionLeads().isEmpty()) {
            panel.with(
                    DETECTION_LEADS,
                    new StringType(String.join(", ", summary.coverage().detectionLeads())));
        }
        summary.notes().forEach(note -> panel.observation().addNote().setText(note));
        return panel.observation();
    }

    private Observation rate() {
        Optional<Rate> rate = summary.rates().whole();
        return frame.panel(RATE_PANEL)
                .with(RATE_MEAN, rate.map(Rate::mean), 0, Absent.UNKNOWN)
                .with(RATE_MIN, rate.map(Rate::min), 0, Absent.UNKNOWN)
                .at(RATE_MIN_TIME, rate.flatMap(r -> time.at(r.minAt())))
                .with(RATE_MAX, rate.map(Rate::max), 0, Absent.UNKNOWN)
                .at(RATE_MAX_TIME, rate.flatMap(r -> time.at(r.maxAt())))
                .observation();
    }

    /** Nobody classified the beats: not performed. They were and there was none: zero. */
    private Observation ectopy(
            AmbulatoryEcgMetric panel,
            Beat.Kind kind,
            AmbulatoryEcgMetric count,
            AmbulatoryEcgMetric perHour,
            AmbulatoryEcgMetric share) {
        Optional<Double> beats =
                summary.beats().classified().isEmpty()
                        ? Optional.empty()
                        : Optional.of(
                                summary.beats().classified().getOrDefault(kind, 0L).doubleValue());
        double hours = hours(summary.coverage().analysable());
        Absent absent = beats.isEmpty() ? Absent.NOT_PERFORMED : Absent.UNKNOWN;
        return frame.panel(panel)
                .with(count, beats, 0, absent)
                .with(perHour, beats.filter(n -> hours > 0).map(n -> n / hours), 1, absent)
                .with(share, beats.flatMap(n -> percent(n, summary.beats().total())), 2, absent)
                .observation();
    }

    private Observation pausePanel(List<Observation> pauses) {
        Optional<Interval> longest = summary.rates().longestRr();
        Observation panel =
                frame.panel(PAUSE_PANEL)
                        .with(PAUSE_COUNT, summary.rhythm().burden(EpisodeKind.PAUSE).episodes(), 0)
                        .with(
                                PAUSE_THRESHOLD,
                                millis(summary.settings().duration(Threshold.PAUSE)),
                                0)
                        .with(LONGEST_RR, longest.map(i -> millis(i.length())), 0, Absent.UNKNOWN)
                        .at(LONGEST_RR_TIME, longest.flatMap(i -> time.at(i.at())))
                        .observation();
        pauses.forEach(pause -> panel.addHasMember(ReportIds.to(pause)));
        if (pauses.size() < summary.rhythm().burden(EpisodeKind.PAUSE).episodes()) {
            panel.addNote().setText("Only the " + MOST_PAUSES + " longest pauses are listed.");
        }
        return panel;
    }

    private Observation variability() {
        return frame.panel(HRV_PANEL)
                .with(SDNN, variability(Variability::sdnn), 1, Absent.UNKNOWN)
                .with(RMSSD, variability(Variability::rmssd), 1, Absent.UNKNOWN)
                .with(PNN50, variability(Variability::pnn50), 1, Absent.UNKNOWN)
                .with(NN_INTERVALS, intervals(), 0, Absent.UNKNOWN)
                .observation();
    }

    private Optional<Double> variability(Function<Variability, Measure> measure) {
        return measure.apply(summary.variability()).value();
    }

    private Optional<Double> intervals() {
        long intervals = summary.variability().intervals();
        return intervals > 0 ? Optional.of((double) intervals) : Optional.empty();
    }

    private List<Observation> pauses() {
        return summary.rhythm().of(EpisodeKind.PAUSE).stream()
                .sorted(Comparator.comparing(Episode::duration).reversed())
                .limit(MOST_PAUSES)
                .sorted(Comparator.comparing(Episode::start))
                .map(this::pause)
                .toList();
    }

    private Observation pause(Episode pause) {
        Observation observation =
                frame.event(PAUSE, pause.start(), time.period(pause.start(), pause.end()));
        observation.setValue(Panel.quantity(PAUSE, millis(pause.duration()), 0));
        if (summary.coverage().start().isEmpty()) {
            observation
                    .addNote()
                    .setText(pause.start().toSeconds() + " s after the start of the recording.");
        }
        return observation;
    }

    private Optional<Double> analysableShare() {
        return percent(
                millis(summary.coverage().analysable()), millis(summary.coverage().recorded()));
    }

    private static Optional<Double> percent(double part, double whole) {
        return whole > 0 ? Optional.of(100 * part / whole) : Optional.empty();
    }

    private static double hours(Duration duration) {
        return duration.toMillis() / 3_600_000.0;
    }

    private static double millis(Duration duration) {
        return duration.toNanos() / 1e6;
    }
}

package dev.isoline.ecgdicom.annotation;

import dev.isoline.ecg.Stretch;
import dev.isoline.ecg.analysis.Findings;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.HeartRates.Interval;
import dev.isoline.ecg.summary.Measure;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Threshold;
import dev.isoline.ecg.summary.Variability;
import dev.isoline.ecgdicom.OrderContext.Code;
import dev.isoline.ecgdicom.annotation.WaveformAnnotation.Range;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;

/**
 * Measurements: what was measured at a place stands there; what holds for the whole recording only
 * in an object that is the whole recording.
 */
final class Measures {

    /** Of one kind: the fastest and the longest. */
    static final int MOST_EPISODES = 100;

    private final Summary summary;
    private final List<Stretch> recorded;
    private final BeatPositions beats;

    Measures(Findings findings, BeatPositions beats) {
        this.summary = findings.summary();
        this.recorded = findings.recorded();
        this.beats = beats;
    }

    List<WaveformAnnotation> of(Stretch object) {
        var annotations = new ArrayList<WaveformAnnotation>();
        for (Interval interval : intervals()) {
            interval(interval, object).ifPresent(annotations::add);
        }
        summary.rates()
                .whole()
                .ifPresent(
                        rate -> {
                            rate(MeasurementCode.MINIMUM, rate.min(), rate.minAt(), object)
                                    .ifPresent(annotations::add);
                            rate(MeasurementCode.MAXIMUM, rate.max(), rate.maxAt(), object)
                                    .ifPresent(annotations::add);
                        });
        if (recorded.equals(List.of(object))) {
            annotations.addAll(ofAll());
        }
        return annotations;
    }

    /** The longest interval and the longest pauses. */
    private LinkedHashSet<Interval> intervals() {
        var intervals = new LinkedHashSet<Interval>();
        summary.rates().longestRr().ifPresent(intervals::add);
        summary.rhythm().foremost(EpisodeKind.PAUSE, MOST_EPISODES).stream()
                .map(pause -> new Interval(pause.start(), pause.duration()))
                .forEach(intervals::add);
        return intervals;
    }

    private Optional<WaveformAnnotation> interval(Interval interval, Stretch object) {
        long first = sample(interval.at());
        return between(first, first + sample(interval.length()), object)
                .map(
                        ends ->
                                WaveformAnnotation.of(MeasurementCode.RR_INTERVAL)
                                        .of(
                                                interval.length().toNanos() / 1e6,
                                                MeasurementCode.MILLISECOND)
                                        .at(Range.SEGMENT, ends));
    }

    /** From the first beat it was averaged over to the last. */
    private Optional<WaveformAnnotation> rate(
            Code which, double rate, Duration at, Stretch object) {
        int first = beats.firstFrom(sample(at));
        int last = first + summary.settings().count(Threshold.RATE_BEATS);
        if (last >= beats.count()) {
            return Optional.empty();
        }
        return between(beats.sample(first), beats.sample(last), object)
                .map(
                        ends ->
                                WaveformAnnotation.of(MeasurementCode.HEART_RATE)
                                        .modifiedBy(which)
                                        .of(rounded(rate), MeasurementCode.PER_MINUTE)
                                        .at(Range.SEGMENT, ends));
    }

    private List<WaveformAnnotation> ofAll() {
        var annotations = new ArrayList<WaveformAnnotation>();
        summary.rates()
                .whole()
                .ifPresent(
                        rate ->
                                annotations.add(
                                        WaveformAnnotation.of(MeasurementCode.HEART_RATE)
                                                .modifiedBy(MeasurementCode.MEAN)
                                                .of(
                                                        rounded(rate.mean()),
                                                        MeasurementCode.PER_MINUTE)));
        annotations.addAll(variability(summary.variability()));
        fibrillation().ifPresent(annotations::add);
        return annotations;
    }

    private Optional<WaveformAnnotation> fibrillation() {
        return Optional.ofNullable(summary.rhythm().burdens().get(EpisodeKind.ATRIAL_FIBRILLATION))
                .map(
                        burden ->
                                WaveformAnnotation.of(MeasurementCode.AF_BURDEN)
                                        .of(rounded(burden.percent()), MeasurementCode.PERCENT));
    }

    private static List<WaveformAnnotation> variability(Variability measures) {
        var annotations = new ArrayList<WaveformAnnotation>();
        add(MeasurementCode.SDNN, measures.sdnn(), MeasurementCode.MILLISECOND, annotations);
        add(MeasurementCode.SDANN, measures.sdann(), MeasurementCode.MILLISECOND, annotations);
        add(
                MeasurementCode.SDNN_INDEX,
                measures.sdnnIndex(),
                MeasurementCode.MILLISECOND,
                annotations);
        add(MeasurementCode.RMSSD, measures.rmssd(), MeasurementCode.MILLISECOND, annotations);
        add(MeasurementCode.PNN50, measures.pnn50(), MeasurementCode.PERCENT, annotations);
        add(
                MeasurementCode.TRIANGULAR_INDEX,
                measures.triangularIndex(),
                MeasurementCode.NO_UNITS,
                annotations);
        return annotations;
    }

    private static void add(
            Code code, Measure measure, Code unit, List<WaveformAnnotation> annotations) {
        measure.value()
                .map(value -> WaveformAnnotation.of(code).of(rounded(value), unit))
                .ifPresent(annotations::add);
    }

    private static Optional<long[]> between(long first, long last, Stretch object) {
        return first >= object.from() && last < object.to()
                ? Positions.within(new Stretch(first, last + 1), object)
                : Optional.empty();
    }

    private long sample(Duration offset) {
        return Math.round(offset.toNanos() * summary.coverage().hz() / 1e9);
    }

    /** Decimals beyond these would claim a precision no one has. */
    private static double rounded(double value) {
        return Math.round(value * 100) / 100.0;
    }
}

package dev.isoline.ecgdicom.annotation;

import dev.isoline.ecg.Stretch;
import dev.isoline.ecg.analysis.Findings;
import dev.isoline.ecg.analysis.Summary;
import dev.isoline.ecgdicom.OrderContext.Code;
import dev.isoline.ecgdicom.annotation.WaveformAnnotation.Range;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;

/**
 * Measurements: what was measured at a place stands there; what holds for the whole recording only
 * in an object that is the whole recording.
 */
final class Measures {

    /** As many as the FHIR report has. */
    private static final int MOST_PAUSES = 100;

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
        for (Summary.Interval interval : intervals()) {
            interval(interval, object).ifPresent(annotations::add);
        }
        summary.rate()
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
    private LinkedHashSet<Summary.Interval> intervals() {
        var intervals = new LinkedHashSet<Summary.Interval>();
        summary.longestRr().ifPresent(intervals::add);
        summary.pauses().stream()
                .sorted(Comparator.comparing(Summary.Interval::length).reversed())
                .limit(MOST_PAUSES)
                .sorted(Comparator.comparing(Summary.Interval::at))
                .forEach(intervals::add);
        return intervals;
    }

    private Optional<WaveformAnnotation> interval(Summary.Interval interval, Stretch object) {
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
        int last = first + summary.settings().rateBeats();
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
        summary.rate()
                .ifPresent(
                        rate ->
                                annotations.add(
                                        WaveformAnnotation.of(MeasurementCode.HEART_RATE)
                                                .modifiedBy(MeasurementCode.MEAN)
                                                .of(
                                                        rounded(rate.mean()),
                                                        MeasurementCode.PER_MINUTE)));
        summary.variability().ifPresent(measures -> annotations.addAll(variability(measures)));
        return annotations;
    }

    private static List<WaveformAnnotation> variability(Summary.Variability measures) {
        return List.of(
                WaveformAnnotation.of(MeasurementCode.SDNN)
                        .of(rounded(measures.sdnn()), MeasurementCode.MILLISECOND),
                WaveformAnnotation.of(MeasurementCode.RMSSD)
                        .of(rounded(measures.rmssd()), MeasurementCode.MILLISECOND),
                WaveformAnnotation.of(MeasurementCode.PNN50)
                        .of(rounded(measures.pnn50()), MeasurementCode.PERCENT));
    }

    private static Optional<long[]> between(long first, long last, Stretch object) {
        return first >= object.from() && last < object.to()
                ? Positions.within(new Stretch(first, last + 1), object)
                : Optional.empty();
    }

    private long sample(Duration offset) {
        return Math.round(offset.toNanos() * summary.hz() / 1e9);
    }

    /** Decimals beyond these would claim a precision no one has. */
    private static double rounded(double value) {
        return Math.round(value * 100) / 100.0;
    }
}

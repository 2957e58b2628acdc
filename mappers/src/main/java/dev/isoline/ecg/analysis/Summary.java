package dev.isoline.ecg.analysis;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the analysis found in one recording. Computed by a program: preliminary until a clinician
 * confirms it. Times are offsets from the start of the recording.
 *
 * @param start local time at the patient, where the recording gives it
 * @param recorded from first to last sample, gaps left out
 * @param analysable the part of it that was good enough to measure
 * @param hz sampling frequency
 * @param detectionLeads labels of the leads the beats were found on
 * @param beats number of beats
 * @param classified beats by class; empty when nobody classified them
 * @param rate heart rate over the whole recording; empty without a measurable interval
 * @param hours one entry per started hour of the recording
 * @param longestRr longest interval between two successive beats, gaps left out
 * @param pauses intervals of {@code settings.pause()} or more, in time order
 * @param variability time-domain measures; empty with fewer than two normal-to-normal intervals
 * @param settings the thresholds used
 * @param notes what a reader has to know, one sentence each
 */
public record Summary(
        Optional<LocalDateTime> start,
        Duration recorded,
        Duration analysable,
        double hz,
        List<String> detectionLeads,
        long beats,
        Map<dev.isoline.ecg.Beat.Kind, Long> classified,
        Optional<Rate> rate,
        List<Hour> hours,
        Optional<Interval> longestRr,
        List<Interval> pauses,
        Optional<Variability> variability,
        AnalysisSettings settings,
        List<String> notes) {

    /** Beats per minute; minimum and maximum of the rate averaged over the settings' beats. */
    public record Rate(double mean, double min, Duration minAt, double max, Duration maxAt) {}

    /**
     * One hour of the recording.
     *
     * @param from offset of its beginning
     * @param beats found in it
     * @param rate empty when it holds no measurable interval
     */
    public record Hour(Duration from, long beats, Optional<Rate> rate) {}

    /** The time between two successive beats; {@code at} is the first of them. */
    public record Interval(Duration at, Duration length) {}

    /**
     * Time-domain heart rate variability over normal-to-normal intervals (Task Force ESC/NASPE
     * 1996).
     *
     * @param intervals number of NN intervals
     * @param sdnn standard deviation of them, ms, n - 1
     * @param rmssd root mean square of successive differences, ms
     * @param pnn50 share of successive differences over 50 ms, percent
     */
    public record Variability(long intervals, double sdnn, double rmssd, double pnn50) {}
}

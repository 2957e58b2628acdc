package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Lead;
import dev.isoline.ecg.summary.Disturbance;
import dev.isoline.ecg.summary.LeadReport;
import java.time.Duration;
import java.util.BitSet;
import java.util.EnumMap;

/**
 * Judges one lead second by second (docs/quality.md): where it is off, saturated or noisy, and how
 * high signal and noise are. Holds one second of it.
 */
final class LeadQuality {

    /** A lead that moves no more, for so long, reads no heart. */
    private static final double QUIET_MICROVOLTS = 20;

    private static final int QUIET_SECONDS = 20;

    private static final double STEEP_MICROVOLTS = 300;

    /** Samples of one value; a wave that is not cut off has two at its top. */
    private static final int CLIPPED = 3;

    /** A range of 8 mV, where the recording does not say what its unit is. */
    private static final double RANGE_MICROVOLTS = 8000;

    private final Lead lead;
    private final double microvolts;
    private final LeadSecond second;
    private final SliceMeasures slices;
    private final QualityMarks marks = new QualityMarks();
    private final QualityMinutes minutes;
    private final HeldValue held;
    private final LeadNoise noise;
    private int judged;
    private int quiet;

    LeadQuality(Lead lead, double hz) {
        this.lead = lead;
        microvolts =
                lead.calibrated()
                        ? Math.abs(lead.sensitivity())
                        : Math.scalb(RANGE_MICROVOLTS, -lead.bitsStored());
        minutes = new QualityMinutes(marks, lead.calibrated());
        second = new LeadSecond(hz);
        slices = new SliceMeasures(hz);
        held = new HeldValue(hz, microvolts, marks);
        noise = new LeadNoise(hz, microvolts, marks, minutes);
    }

    /** Takes the samples of this lead from {@code first} on. */
    void take(long first, int[] samples) {
        if (first != second.end()) {
            begin(first);
        }
        for (int i = 0; i < samples.length; ) {
            i += second.take(samples, i);
            judge();
        }
    }

    private void begin(long first) {
        held.interrupt();
        noise.interrupt();
        second.begin(first);
        judged = second.slicesTaken();
        judged += second.slice(judged) < first - second.position(0) ? 1 : 0;
        quiet = 0;
    }

    private void judge() {
        marks.recorded(second.number());
        for (int end = second.slicesTaken(); judged < end; judged++) {
            slice(second.slice(judged), second.slice(judged + 1));
        }
        if (second.isOver()) {
            whole();
            second.next();
            judged = 0;
        }
    }

    private void slice(int from, int to) {
        slices.measure(judged, second.samples(), from, to);
        held.take(
                second.position(from),
                second.position(to),
                slices.lowest(judged),
                slices.highest(judged));
        clip(slices.lowest(judged), from, to);
        clip(slices.highest(judged), from, to);
    }

    /** A wave that is cut off reaches the end of the range steeply and stays. */
    private void clip(int extreme, int from, int to) {
        if (held.isEndOfRange(extreme) && slices.rise(judged) * microvolts >= STEEP_MICROVOLTS) {
            int count = 0;
            for (int i = from; i < to; i++) {
                count += second.samples()[i] == extreme ? 1 : 0;
            }
            if (count >= Math.max(CLIPPED, (to - from) / 2)) {
                marks.found(Disturbance.SATURATED, second.number());
            }
        }
    }

    private void whole() {
        boolean whole = second.isFull() && slices.isWhole();
        quiet = whole && slices.range() * microvolts <= QUIET_MICROVOLTS ? quiet + 1 : 0;
        if (quiet >= QUIET_SECONDS) {
            int from = second.number() - (quiet == QUIET_SECONDS ? QUIET_SECONDS - 1 : 0);
            marks.unusable(Disturbance.LEAD_OFF, from, second.number());
        }
        if (whole && marks.isUsable(second.number())) {
            held.baseline(slices.baseline());
            noise.take(second, slices);
        }
    }

    /** The recording ends here. */
    void finish() {
        noise.finish();
    }

    /**
     * Seconds of which nothing can be taken; those whose noise buries the beats are known when
     * their minute is over.
     */
    BitSet unusableSeconds() {
        return marks.unusable();
    }

    /** What was found, once the recording is finished. */
    LeadReport report() {
        var times = new EnumMap<Disturbance, Duration>(Disturbance.class);
        int end = marks.seconds();
        marks.disturbed(0, end).forEach((kind, s) -> times.put(kind, Duration.ofSeconds(s)));
        return new LeadReport(
                lead.label(),
                Duration.ofSeconds(marks.recorded(0, end)),
                Duration.ofSeconds(marks.usable(0, end)),
                times,
                minutes.amplitude(),
                minutes);
    }
}

package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.RankedValue;
import dev.isoline.ecg.summary.LeadReport;
import java.util.List;

/**
 * One lead while beats are looked for: its quality, its last seconds, and between which heights a
 * QRS complex stands out from noise on it.
 */
final class DetectionLead {

    /** A lead whose QRS complexes are hardly higher than its noise still counts this much. */
    private static final double LEAST_CLARITY = 0.01;

    private static final double AROUND_SECONDS = 1;

    /** Share of the heights around that are lower than what is quiet there. */
    private static final double QUIET = 0.1;

    /** Peaks of noise are so many times as high as where it is quiet. */
    private static final double PEAK_OF_NOISE = 2.5;

    /** Of the complexes: noise that is higher hides them. */
    private static final double MOST_NOISE = 0.5;

    private final Lead lead;
    private final Pace pace;
    private final LeadQuality quality;
    private final LeadSignal signal;
    private final QrsFilter filter;
    private final Median complexes = new Median(0);
    private final Median noise = new Median(0);
    private double background;
    private double quiet;
    private long used;

    DetectionLead(Lead lead, Pace pace) {
        this.lead = lead;
        this.pace = pace;
        quality = new LeadQuality(lead, pace.hz());
        signal = new LeadSignal(pace.samples(QrsFilter.REMEMBERED_SECONDS));
        filter = new QrsFilter(signal, pace);
    }

    void begin(long position) {
        signal.begin(position);
        filter.begin(position);
    }

    Lead lead() {
        return lead;
    }

    void judge(Block block, int lead) {
        quality.take(block.first(), block.samples()[lead]);
    }

    void finish() {
        quality.finish();
    }

    LeadReport quality() {
        return quality.report();
    }

    LeadSignal signal() {
        return signal;
    }

    QrsFilter filter() {
        return filter;
    }

    /** No second from one to another, both included, is unusable. */
    boolean usable(int from, int to) {
        int next = quality.unusableSeconds().nextSetBit(from);
        return next < 0 || next > to;
    }

    /** Whether any lead can be used in a second. */
    static boolean anyUsable(List<DetectionLead> leads, int second) {
        boolean usable = false;
        for (int i = 0; i < leads.size() && !usable; i++) {
            usable = leads.get(i).usable(second, second);
        }
        return usable;
    }

    /** The median of the highest values of the first seconds stands for the first QRS heights. */
    void learn(int seconds) {
        var highest = new double[seconds];
        int second = pace.steps(1);
        for (int i = 0; i < seconds; i++) {
            highest[i] = filter.highest((long) i * second + second / 2, second / 2);
        }
        complexes.fill(RankedValue.middle(highest, seconds));
    }

    void complex(double height) {
        complexes.add(height);
    }

    void noise(double height) {
        noise.add(height);
    }

    /**
     * Height of noise: the median of the last peaks rejected. As there are none in a fast rhythm
     * until it pauses, what is quiet around counts too.
     */
    double noise() {
        double peaks = Math.min(PEAK_OF_NOISE * quiet, MOST_NOISE * complexes.value());
        return Math.max(noise.value(), peaks);
    }

    /** From noise to signal. */
    double span() {
        return Math.max(1, complexes.value() - noise());
    }

    /** Height of the complexes. */
    double complex() {
        return Math.max(1, complexes.value());
    }

    /** Looks at what is between the complexes around a step. */
    void look(long step) {
        var heights = filter.around(step, pace.steps(AROUND_SECONDS));
        background = RankedValue.middle(heights, heights.length);
        quiet = RankedValue.of(heights, heights.length, (int) (QUIET * heights.length));
    }

    /**
     * How far the complexes stand out of the noise and of what is between them, 0 to 1, as a weight
     * among leads.
     */
    double clarity() {
        double clear = Math.max(0, 1 - noise() / complex());
        clear *= Math.max(0, 1 - background / complex());
        return Math.max(LEAST_CLARITY, clear * clear * clear * clear);
    }

    void use() {
        used++;
    }

    boolean isUsed() {
        return used > 0;
    }
}

package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.BeatSeries;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.summary.LeadReport;
import java.util.BitSet;

/** One lead while beats are looked for: its detector, its quality, its beats. */
final class DetectionLead {

    /** Two leads may place one beat differently by less than this. */
    private static final double SAME_BEAT_SECONDS = 0.15;

    private final Lead lead;
    private final double hz;
    private final QrsDetector detector;
    private final LeadQuality quality;
    private final BeatSeries beats = new BeatSeries();
    private int at;

    DetectionLead(Lead lead, double hz) {
        this.lead = lead;
        this.hz = hz;
        quality = new LeadQuality(lead, hz);
        detector = new QrsDetector(hz, sample -> beats.add(sample, Beat.Kind.UNCLASSIFIED));
    }

    void take(long first, int[] samples) {
        quality.take(first, samples);
        detector.take(first, samples);
    }

    void finish() {
        detector.finish();
        quality.finish();
    }

    LeadReport quality() {
        return quality.report();
    }

    Lead lead() {
        return lead;
    }

    boolean usable(int from, int to) {
        BitSet unusable = quality.unusableSeconds();
        int next = unusable.nextSetBit(from);
        return next < 0 || next > to;
    }

    /** Appends the beats of a second; seconds are asked for in order. */
    void beatsIn(int second, BeatSeries all) {
        while (at < beats.size() && beats.sample(at) < second * hz) {
            at++;
        }
        while (at < beats.size() && beats.sample(at) < (second + 1) * hz) {
            long sample = beats.sample(at++);
            if (all.isEmpty() || sample - all.sample(all.size() - 1) >= SAME_BEAT_SECONDS * hz) {
                all.add(sample, Beat.Kind.UNCLASSIFIED);
            }
        }
    }
}

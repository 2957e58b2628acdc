package dev.isoline.ecg.analysis;

import dev.isoline.ecg.summary.Disturbance;
import java.util.Arrays;

/**
 * Judges the noise of a lead by the second and keeps its levels by the minute. Limits: own choice,
 * no source; 100 microvolts are one millimetre on paper at 10 mm/mV.
 */
final class LeadNoise {

    /** Hum of 100 microvolts from peak to peak. */
    private static final double MAINS_MICROVOLTS = 50;

    /** Four standard deviations are 100 microvolts. */
    private static final double MUSCLE_MICROVOLTS = 25;

    private static final double WANDER_MICROVOLTS = 500;
    private static final int WANDER_SECONDS = 5;

    /**
     * White noise alone swings by 6.4 of its standard deviations in the time of a QRS complex; from
     * 9 on the beats are found (measured, docs/quality.md).
     */
    private static final double BURIED = 8;

    /** Less hum than this is not looked for. */
    private static final double LEAST_MAINS_MICROVOLTS = 20;

    /** Mains are not exactly at their frequency: less noise than this share of them is theirs. */
    private static final double MAINS_REST = 0.3;

    /**
     * White noise has an amplitude of 2.45 standard deviations by the root of the number of samples
     * at one frequency under the window, and its roughness is 2.45 standard deviations: 2.5 times
     * that is louder than all but one second in 500.
     */
    private static final double CHANCE = 2.5;

    /** White noise of variance 1 adds so much to the second difference. */
    private static final double GAIN_OF_WHITE_NOISE = 6;

    /** How far the low rank of the slices lies under their mean; found by simulation. */
    private static final double LOW_RANK = 0.6;

    private final double microvolts;
    private final Hum[] hums;
    private final double leastMains;
    private final double lowRank;
    private final int[] baselines = new int[WANDER_SECONDS];
    private final QualityMarks marks;
    private final QualityMinutes minutes;
    private final MinuteLevels levels = new MinuteLevels();
    private int baselinesKnown;
    private double mains;
    private double rough;
    private final double[] cleaned;
    private int minute;

    LeadNoise(double hz, double microvolts, QualityMarks marks, QualityMinutes minutes) {
        this.microvolts = microvolts;
        this.marks = marks;
        this.minutes = minutes;
        hums = new Hum[] {new Hum(50, hz), new Hum(60, hz)};
        cleaned = new double[(int) Math.ceil(hz) + 1];
        leastMains = LEAST_MAINS_MICROVOLTS / microvolts;
        lowRank = 1 - LOW_RANK / Math.sqrt(hz / SliceMeasures.A_SECOND);
    }

    /** Takes a full second without a missing sample. */
    void take(LeadSecond second, SliceMeasures slices) {
        int number = second.number();
        if (number / MinuteLevels.SECONDS != minute) {
            finish();
            minute = number / MinuteLevels.SECONDS;
        }
        mains(second, slices);
        double muscle = Math.sqrt(rough / GAIN_OF_WHITE_NOISE) / lowRank;
        double wander = wander(slices.baseline());
        levels.add(number, slices.swing(), mains, muscle, wander);
        mark(Disturbance.MAINS, mains, MAINS_MICROVOLTS, number);
        mark(
                Disturbance.MUSCLE,
                muscle > MAINS_REST * mains ? muscle : 0,
                MUSCLE_MICROVOLTS,
                number);
        mark(Disturbance.WANDER, wander, WANDER_MICROVOLTS, number);
    }

    /** Finds the amplitude of the stronger hum, 0 without, and the roughness left without it. */
    private void mains(LeadSecond second, SliceMeasures slices) {
        rough = slices.roughness();
        mains = 0;
        double chance = CHANCE * Math.sqrt(rough / second.length());
        double removed = 0;
        for (var hum : hums) {
            double gain = slices.roughness(hum.frequency());
            if (hum.isMeasurable() && rough >= gain * leastMains * leastMains) {
                double amplitude = hum.amplitude(second, slices.baseline());
                if (amplitude > chance) {
                    clean(second, hum);
                    mains = Math.max(mains, amplitude);
                    removed += gain * amplitude * amplitude;
                }
            }
        }
        if (mains > 0) {
            accept(slices.roughness(cleaned, second), removed);
        }
    }

    private void clean(LeadSecond second, Hum hum) {
        if (mains == 0) {
            Arrays.setAll(cleaned, i -> second.samples()[i]);
        }
        hum.remove(cleaned, second.length());
    }

    /** Hum is in every slice; what only QRS complexes have of its frequency is none. */
    private void accept(double left, double removed) {
        if (left <= rough - removed / 2) {
            rough = left;
        } else {
            mains = 0;
        }
    }

    private void mark(Disturbance kind, double height, double limit, int second) {
        if (height * microvolts >= limit) {
            marks.found(kind, second);
        }
    }

    private double wander(int baseline) {
        baselines[baselinesKnown++ % WANDER_SECONDS] = baseline;
        int low = baseline;
        int high = baseline;
        for (int i = Math.min(baselinesKnown, WANDER_SECONDS) - 1; i >= 0; i--) {
            low = Math.min(low, baselines[i]);
            high = Math.max(high, baselines[i]);
        }
        return (double) high - low;
    }

    /** No wander reaches across a gap. */
    void interrupt() {
        baselinesKnown = 0;
    }

    /** Ends the minute: only the whole of it shows how high its QRS complexes are. */
    void finish() {
        if (levels.isEmpty()) {
            return;
        }
        double limit = Math.max(levels.amplitude() / BURIED, MUSCLE_MICROVOLTS / microvolts);
        levels.noisier(limit, second -> marks.unusable(Disturbance.BURIED, second, second));
        minutes.add(minute, levels, microvolts);
        levels.clear();
    }
}

package dev.isoline.ecg.analysis;

import java.util.Arrays;
import java.util.function.IntConsumer;

/** Heights of signal and noise in one minute, second by second, in the unit of the samples. */
final class MinuteLevels {

    static final int SECONDS = 60;

    /** Three seconds hold a QRS complex from 20 beats a minute on. */
    private static final int QRS_SECONDS = 3;

    private final double[] swing = new double[SECONDS / QRS_SECONDS];
    private final double[] mains = new double[SECONDS];
    private final double[] muscle = new double[SECONDS];
    private final double[] wander = new double[SECONDS];
    private final int[] second = new int[SECONDS];
    private int count;

    void add(int second, double swing, double mains, double muscle, double wander) {
        int of = second % SECONDS / QRS_SECONDS;
        this.swing[of] = Math.max(this.swing[of], swing);
        this.second[count] = second;
        this.mains[count] = mains;
        this.muscle[count] = muscle;
        this.wander[count++] = wander;
    }

    boolean isEmpty() {
        return count == 0;
    }

    /** Height of the QRS complexes, peak to peak: of each three seconds the largest, the median. */
    double amplitude() {
        double[] sorted = Arrays.stream(swing).filter(s -> s > 0).sorted().toArray();
        return sorted.length == 0 ? 0 : sorted[sorted.length / 2];
    }

    double mains() {
        return median(mains);
    }

    double muscle() {
        return median(muscle);
    }

    double wander() {
        return median(wander);
    }

    private double median(double[] values) {
        double[] sorted = Arrays.copyOf(values, count);
        Arrays.sort(sorted);
        return sorted[count / 2];
    }

    /** Seconds whose muscle noise is over a limit. */
    void noisier(double limit, IntConsumer seconds) {
        for (int i = 0; i < count; i++) {
            if (muscle[i] > limit) {
                seconds.accept(second[i]);
            }
        }
    }

    void clear() {
        count = 0;
        Arrays.fill(swing, 0);
    }
}

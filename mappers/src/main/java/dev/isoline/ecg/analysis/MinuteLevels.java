package dev.isoline.ecg.analysis;

import dev.isoline.ecg.RankedValue;
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
        var known = new double[swing.length];
        int of = 0;
        for (double some : swing) {
            if (some > 0) {
                known[of++] = some;
            }
        }
        return of == 0 ? 0 : RankedValue.middle(known, of);
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
        return RankedValue.middle(values.clone(), count);
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

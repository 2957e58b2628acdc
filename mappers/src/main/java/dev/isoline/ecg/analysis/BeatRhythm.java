package dev.isoline.ecg.analysis;

/** The interval before each beat, in samples, and what is usual around it. */
final class BeatRhythm {

    static final int AROUND = 10;

    /** Longer ones are pauses and say nothing about the usual. */
    private static final double LONGEST_SECONDS = 2.5;

    private final double[] interval;
    private final double[] usual;

    BeatRhythm(BeatShapes shapes, Pace pace) {
        interval = new double[shapes.count()];
        for (int i = 0; i < interval.length; i++) {
            interval[i] =
                    i == 0 || shapes.isFirst(i) ? Double.NaN : shapes.at(i) - shapes.at(i - 1);
        }
        usual = means(LONGEST_SECONDS * pace.hz());
    }

    private double[] means(double longest) {
        var means = new double[interval.length];
        for (int i = 0; i < means.length; i++) {
            double sum = 0;
            int count = 0;
            int to = Math.min(means.length - 1, i + AROUND);
            for (int j = Math.max(0, i - AROUND); j <= to; j++) {
                if (interval[j] <= longest) {
                    sum += interval[j];
                    count++;
                }
            }
            means[i] = count == 0 ? Double.NaN : sum / count;
        }
        return means;
    }

    /** Before a beat; not a number where the recording begins. */
    double interval(int beat) {
        return interval[beat];
    }

    /** Mean interval around a beat. */
    double usual(int beat) {
        return usual[beat];
    }

    /** The interval before a beat over the mean around it; 1 where it is not known. */
    double ratio(int beat) {
        double ratio = interval[beat] / usual[beat];
        return Double.isNaN(ratio) ? 1 : ratio;
    }
}

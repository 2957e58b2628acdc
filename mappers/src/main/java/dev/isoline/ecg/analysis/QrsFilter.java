package dev.isoline.ecg.analysis;

/**
 * Turns an ECG into a signal that is high in a QRS complex and low elsewhere: band-pass of about 8
 * to 16 Hz, slope, absolute value, mean of 80 ms (the scheme of Pan and Tompkins 1985 with the
 * absolute value in place of the square, so that heights follow the amplitude). All filters are
 * moving sums of whole numbers: linear phase, one delay for every frequency, at any sampling rate;
 * those of 20 ms and 16.7 ms have their zeros at the mains frequencies 50 and 60 Hz.
 */
final class QrsFilter {

    private final MovingSum mains50;
    private final MovingSum mains60;
    private final MovingSum baseline;
    private final MovingSum energy;
    private final History smooth;
    private final History lowPassed;
    private final History highPassed;
    private final int slopeSpan;

    QrsFilter(double hz) {
        mains50 = new MovingSum(samples(hz, 0.020));
        mains60 = new MovingSum(samples(hz, 1 / 60.0));
        baseline = new MovingSum(samples(hz, 0.125) | 1);
        energy = new MovingSum(samples(hz, 0.080));
        slopeSpan = samples(hz, 0.010);
        int memory = samples(hz, 2);
        smooth = new History(memory);
        lowPassed = new History(memory);
        highPassed = new History(memory);
    }

    static int samples(double hz, double seconds) {
        return (int) Math.max(1, Math.round(hz * seconds));
    }

    /** Takes one sample, gives one value, which belongs to the sample {@link #delay()} before. */
    double next(int sample) {
        long once = mains50.add(sample);
        smooth.add(once);
        long low = mains60.add(once);
        lowPassed.add(low);
        long wide = baseline.add(low);
        long centre = lowPassed.at(lowPassed.end() - 1 - baseline.length() / 2);
        highPassed.add(centre * baseline.length() - wide);
        return (double) energy.add(Math.abs(slope(highPassed, highPassed.end() - 1)));
    }

    private long slope(History signal, long position) {
        return signal.at(position) - signal.at(position - slopeSpan);
    }

    int delay() {
        return delayOfSlope() + energy.length() / 2;
    }

    private int delayOfSlope() {
        return delayOfLowPass() + baseline.length() / 2 + slopeSpan / 2;
    }

    private int delayOfLowPass() {
        return (mains50.length() + mains60.length() - 2) / 2;
    }

    /** Largest slope, band-passed, within {@code reach} of a sample. */
    double steepest(long sample, int reach) {
        long steepest = 0;
        for (long i = sample - reach; i <= sample + reach; i++) {
            steepest = Math.max(steepest, Math.abs(slope(highPassed, i + delayOfSlope())));
        }
        return steepest;
    }

    /**
     * How far the smaller of rise and fall, low-passed, is behind the larger one, 0 to 1; near 0 a
     * step of the baseline.
     */
    double balance(long sample, int reach) {
        long rise = 0;
        long fall = 0;
        for (long i = sample - reach; i <= sample + reach; i++) {
            long slope = slope(lowPassed, i + delayOfLowPass() + slopeSpan / 2);
            rise = Math.max(rise, slope);
            fall = Math.max(fall, -slope);
        }
        return (double) Math.min(rise, fall) / Math.max(1, Math.max(rise, fall));
    }

    /** Mains-free signal at a sample. */
    long smooth(long sample) {
        return smooth.at(sample + (mains50.length() - 1) / 2);
    }
}

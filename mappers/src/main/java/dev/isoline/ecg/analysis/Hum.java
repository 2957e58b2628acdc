package dev.isoline.ecg.analysis;

/**
 * One frequency, a whole number of hertz, in a second of samples: by correlation with sine and
 * cosine under a raised cosine (Hann) window, which keeps out what is far from the frequency.
 */
final class Hum {

    private final double frequency;
    private final boolean measurable;
    private final double[] cosine;
    private final double[] sine;
    private final double[] window;
    private double real;
    private double imaginary;

    Hum(double frequency, double hz) {
        this.frequency = frequency;
        measurable = frequency < hz / 2 - 2;
        int length = (int) Math.ceil(hz) + 1;
        cosine = new double[length];
        sine = new double[length];
        window = new double[length];
        for (int i = 0; i < length; i++) {
            cosine[i] = Math.cos(2 * Math.PI * frequency * i / hz);
            sine[i] = Math.sin(2 * Math.PI * frequency * i / hz);
            window[i] = 1 - Math.cos(2 * Math.PI * i / hz);
        }
    }

    double frequency() {
        return frequency;
    }

    /** Whether the sampling rate tells the frequency from others. */
    boolean isMeasurable() {
        return measurable;
    }

    /** Amplitude in the unit of the samples. */
    double amplitude(LeadSecond second, int baseline) {
        int[] samples = second.samples();
        int length = second.length();
        double c = 0;
        double s = 0;
        for (int i = 0; i < length; i++) {
            double x = (samples[i] - baseline) * window[i];
            c += x * cosine[i];
            s += x * sine[i];
        }
        real = 2 * c / length;
        imaginary = 2 * s / length;
        return Math.sqrt(real * real + imaginary * imaginary);
    }

    /** Takes off what was found last. */
    void remove(double[] from, int length) {
        for (int i = 0; i < length; i++) {
            from[i] -= real * cosine[i] + imaginary * sine[i];
        }
    }
}

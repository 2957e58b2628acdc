package dev.isoline.ecg.analysis;

/** How strong one frequency, a whole number of hertz, is in a second of samples. */
final class Hum {

    private final double frequency;
    private final boolean measurable;
    private final double[] cosine;
    private final double[] sine;

    Hum(double frequency, double hz) {
        this.frequency = frequency;
        measurable = frequency < hz / 2 - 1;
        int length = (int) Math.ceil(hz) + 1;
        cosine = new double[length];
        sine = new double[length];
        for (int i = 0; i < length; i++) {
            cosine[i] = Math.cos(2 * Math.PI * frequency * i / hz);
            sine[i] = Math.sin(2 * Math.PI * frequency * i / hz);
        }
    }

    double frequency() {
        return frequency;
    }

    /** Amplitude in the unit of the samples; 0 at a frequency the sampling rate cannot tell. */
    double amplitude(LeadSecond second, int baseline) {
        if (!measurable) {
            return 0;
        }
        int[] samples = second.samples();
        int length = second.length();
        double real = 0;
        double imaginary = 0;
        for (int i = 0; i < length; i++) {
            double x = samples[i] - baseline;
            real += x * cosine[i];
            imaginary += x * sine[i];
        }
        return 2 * Math.hypot(real, imaginary) / length;
    }
}

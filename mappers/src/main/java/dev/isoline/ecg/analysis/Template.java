package dev.isoline.ecg.analysis;

/** A shape beats have in common. */
final class Template {

    /** The template follows its beats as slowly as a mean of so many. */
    private static final int MEMORY = 20;

    private final float[] window;
    private final float[] energy;
    private float[] sum;
    private float[] weight;
    private int seen = 1;
    private int members;
    private double fits;

    Template(float[] window, int leads) {
        this.window = window;
        energy = new float[leads];
        measure();
    }

    private void measure() {
        int width = window.length / energy.length;
        for (int lead = 0; lead < energy.length; lead++) {
            float sum = 0;
            for (int i = lead * width; i < (lead + 1) * width; i++) {
                sum += window[i] * window[i];
            }
            energy[lead] = sum;
        }
    }

    float[] window() {
        return window;
    }

    /** Sum of squares of the window on a lead. */
    float energy(int lead) {
        return energy[lead];
    }

    int seen() {
        return seen;
    }

    /** Goes a little way towards a beat that fits. */
    void follow(float[] beat) {
        float way = 1f / Math.min(++seen, MEMORY);
        for (int i = 0; i < window.length; i++) {
            window[i] += way * (beat[i] - window[i]);
        }
        measure();
    }

    /** Takes in a template that is nearly the same. */
    void merge(Template other) {
        float way = (float) other.seen / (seen + other.seen);
        for (int i = 0; i < window.length; i++) {
            window[i] += way * (other.window[i] - window[i]);
        }
        measure();
        seen += other.seen;
    }

    /** How alike two templates are, as in {@link ShapeMatch}, not shifted. */
    double like(Template other) {
        double product = 0;
        double both = 1e-9;
        for (int i = 0; i < window.length; i++) {
            product += window[i] * other.window[i];
            both += window[i] * window[i] + other.window[i] * other.window[i];
        }
        return 2 * product / both;
    }

    /** From now on {@link #member} counts. */
    void count(int length, int leads) {
        sum = new float[length];
        weight = new float[leads];
        members = 0;
        seen = Math.min(seen, MEMORY);
    }

    /** Adds a beat to the mean of all that have this shape. */
    void member(float[] shape, float[] weight, int shift, double fit) {
        int length = shape.length / weight.length;
        members++;
        fits += fit;
        for (int lead = 0; lead < weight.length; lead++) {
            this.weight[lead] += weight[lead];
            for (int i = Math.max(0, -shift); i < length - Math.max(0, shift); i++) {
                sum[lead * length + i] += shape[lead * length + i + shift];
            }
        }
    }

    int members() {
        return members;
    }

    /** How well its beats fit, on the mean. */
    double fit() {
        return fits / Math.max(1, members);
    }

    float[] meanWeight() {
        return mean(weight);
    }

    /** Mean shape of its beats. */
    float[] mean() {
        return mean(sum);
    }

    private float[] mean(float[] of) {
        var mean = of.clone();
        for (int i = 0; i < mean.length; i++) {
            mean[i] /= Math.max(1, members);
        }
        return mean;
    }
}

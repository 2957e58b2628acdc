package dev.isoline.ecg.analysis;

/**
 * Lays a beat's shape over a template, shifted by up to 50 ms: 1 when they are equal, 0 when they
 * have nothing in common. Shape and amplitude both count: twice the product over the sum of
 * squares, over all leads by their weight, each less its mean.
 */
final class ShapeMatch {

    /** Of the R peak: a broad ventricular complex and no T wave. */
    private static final double BEFORE_SECONDS = 0.10;

    private static final double AFTER_SECONDS = 0.15;
    private static final double SHIFT_SECONDS = 0.05;

    /** No other shift can be much better. */
    private static final double GOOD = 0.95;

    /** More is seldom gained by shifting a shape that has its R peak where the template has it. */
    private static final double GAINED = 0.2;

    private final int leads;
    private final int length;
    private final int start;
    private final int width;
    private final int reach;
    private final double[] sums;
    private final double[] squares;
    private float[] shape;
    private float[] weight;
    private int shift;

    ShapeMatch(BeatShapes shapes, Pace pace) {
        leads = shapes.leads();
        length = shapes.length();
        int before = pace.steps(BEFORE_SECONDS);
        start = shapes.before() - before;
        width = before + pace.steps(AFTER_SECONDS) + 1;
        reach = pace.steps(SHIFT_SECONDS);
        sums = new double[leads * (length + 1)];
        squares = new double[leads * (length + 1)];
    }

    /** Values of a window on all leads. */
    int size() {
        return leads * width;
    }

    /** The beat that is laid over templates from now on. */
    void beat(float[] shape, float[] weight) {
        this.shape = shape;
        this.weight = weight;
        for (int lead = 0; lead < leads; lead++) {
            double sum = 0;
            double square = 0;
            for (int i = 0; i < length; i++) {
                double value = shape[lead * length + i];
                sum += value;
                square += value * value;
                sums[lead * (length + 1) + i + 1] = sum;
                squares[lead * (length + 1) + i + 1] = square;
            }
        }
    }

    /** How well the beat fits a template at its best shift. */
    double with(Template template) {
        double here = at(template, 0);
        return here < GOOD ? search(template, here) : settle(0, here);
    }

    /**
     * The same, but looked for near by only, and not at all where it promises less than a value;
     * for a template that had better fit well.
     */
    double roughly(Template template, double wanted) {
        double here = at(template, 0);
        if (here < wanted - GAINED || here >= GOOD) {
            return settle(0, here);
        }
        double left = at(template, -1);
        double right = at(template, 1);
        int way = left > right ? -1 : 1;
        double next = Math.max(left, right);
        int found = 0;
        while (next > here) {
            here = next;
            found += way;
            next = Math.abs(found + way) > reach ? here : at(template, found + way);
        }
        return settle(found, here);
    }

    private double search(Template template, double here) {
        double best = here;
        int found = 0;
        for (int i = 1; i <= reach && best < GOOD; i++) {
            double left = at(template, -i);
            double right = at(template, i);
            if (Math.max(left, right) > best) {
                best = Math.max(left, right);
                found = left > right ? -i : i;
            }
        }
        return settle(found, best);
    }

    private double settle(int found, double fit) {
        shift = found;
        return fit;
    }

    /** Of the last match. */
    int shift() {
        return shift;
    }

    private double at(Template template, int shift) {
        var window = template.window();
        double product = 0;
        double both = 1e-9;
        for (int lead = 0; lead < leads; lead++) {
            if (weight[lead] > 0) {
                float dot = dot(window, lead * width, lead * length + start + shift);
                product += weight[lead] * dot;
                both += weight[lead] * (template.energy(lead) + energy(lead, start + shift));
            }
        }
        return 2 * product / both;
    }

    /** Two sums at a time: one would have to wait for itself. */
    private float dot(float[] window, int at, int from) {
        float even = 0;
        float odd = 0;
        int i = 0;
        for (; i + 1 < width; i += 2) {
            even += shape[from + i] * window[at + i];
            odd += shape[from + i + 1] * window[at + i + 1];
        }
        return i < width ? even + odd + shape[from + i] * window[at + i] : even + odd;
    }

    private double energy(int lead, int from) {
        int at = lead * (length + 1) + from;
        double sum = sums[at + width] - sums[at];
        return squares[at + width] - squares[at] - sum * sum / width;
    }

    /** The beat's window at a shift, each lead less its mean. */
    float[] window(int shift) {
        var window = new float[leads * width];
        for (int lead = 0; lead < leads; lead++) {
            int at = lead * (length + 1) + start + shift;
            float mean = (float) ((sums[at + width] - sums[at]) / width);
            for (int i = 0; i < width; i++) {
                window[lead * width + i] = shape[lead * length + start + shift + i] - mean;
            }
        }
        return window;
    }

    /**
     * Area between the beat, at the shift of the last match, and a template, over the template's.
     */
    double areaBetween(float[] template) {
        var window = window(shift);
        double between = 0;
        double area = 1e-9;
        for (int i = 0; i < window.length; i++) {
            between += weight[i / width] * Math.abs(window[i] - template[i]);
            area += weight[i / width] * Math.abs(template[i]);
        }
        return between / area;
    }
}

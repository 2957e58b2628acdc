package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Block;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingHeader;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** P, QRS and T as Gaussian bumps at times a test decides, 5 microvolts a unit. */
final class SyntheticEcg implements Recording {

    private static final double UNIT = 5;
    private static final int BLOCK = 1000;

    private final double hz;
    private final List<int[]> leads = new ArrayList<>();
    private final List<Beat> reference = new ArrayList<>();
    private final Deque<Block> blocks = new ArrayDeque<>();
    private final double[] times;
    private final double seconds;
    private Beat.Kind[] kinds = {};
    private double sensitivity = UNIT;

    SyntheticEcg(double hz, double seconds, double... times) {
        this.hz = hz;
        this.seconds = seconds;
        this.times = times;
    }

    /** Beats of one interval from 0.5 s on. */
    static double[] regular(double seconds, double interval) {
        int count = (int) ((seconds - 1) / interval) + 1;
        var times = new double[count];
        for (int i = 0; i < count; i++) {
            times[i] = 0.5 + i * interval;
        }
        return times;
    }

    /**
     * @param millivolts height of the R peak
     * @param noise standard deviation of white noise, mV
     */
    SyntheticEcg lead(double millivolts, double noise) {
        var random = new Random(7);
        var samples = new int[(int) Math.round(seconds * hz)];
        for (int i = 0; i < samples.length; i++) {
            double wander = 0.2 * Math.sin(2 * Math.PI * 0.2 * i / hz);
            samples[i] =
                    units(millivolts * beatAt(i / hz) + wander + noise * random.nextGaussian());
        }
        leads.add(samples);
        return this;
    }

    private double beatAt(double time) {
        double sum = 0;
        int near = Arrays.binarySearch(times, time);
        int from = Math.max(0, (near < 0 ? -near - 1 : near) - 1);
        for (int i = from; i < Math.min(times.length, from + 2); i++) {
            sum += shape(i < kinds.length ? kinds[i] : Beat.Kind.N, time - times[i]);
        }
        return sum;
    }

    private static double shape(Beat.Kind kind, double t) {
        switch (kind) {
            case V:
                return bump(t, -0.03, 0.02, 0.5)
                        + bump(t, 0.02, 0.03, -1.2)
                        + bump(t, 0.3, 0.06, 0.4);
            case F:
                return (shape(Beat.Kind.N, t) + shape(Beat.Kind.V, t)) / 2;
            case Q: // a stimulus and the broad complex that answers it
                return bump(t, -0.06, 0.001, 0.8) + shape(Beat.Kind.V, t);
            default:
                return bump(t, -0.16, 0.025, 0.12)
                        + bump(t, -0.025, 0.008, -0.1)
                        + bump(t, 0, 0.011, 1)
                        + bump(t, 0.028, 0.009, -0.2)
                        + bump(t, 0.26, 0.05, 0.3);
        }
    }

    /** Shapes of the beats on the leads that follow; beats without one are normal. */
    SyntheticEcg shaped(Beat.Kind... kinds) {
        this.kinds = kinds;
        return this;
    }

    SyntheticEcg uncalibrated() {
        sensitivity = 0;
        return this;
    }

    /** White noise on the last lead, standard deviation in mV. */
    SyntheticEcg disturb(double from, double to, double millivolts) {
        var random = new Random(11);
        for (int i = (int) (from * hz); i < (int) (to * hz); i++) {
            last()[i] += units(millivolts * random.nextGaussian());
        }
        return this;
    }

    /** Ventricular flutter of 1 mV, 4 a second, instead of what the last lead has. */
    SyntheticEcg flutter(double from, double to) {
        for (int i = (int) (from * hz); i < (int) (to * hz); i++) {
            last()[i] = units(Math.sin(2 * Math.PI * 4 * i / hz));
        }
        return this;
    }

    private static double bump(double time, double at, double width, double height) {
        return height * Math.exp(-Math.pow((time - at) / width, 2) / 2);
    }

    private static int units(double millivolts) {
        return (int) Math.round(millivolts * 1000 / UNIT);
    }

    /** Adds the first lead of another to the last of this one. */
    SyntheticEcg add(SyntheticEcg other) {
        var samples = last();
        Arrays.setAll(samples, i -> samples[i] + other.leads.get(0)[i]);
        return this;
    }

    /** Raises the last lead from a time on. */
    SyntheticEcg raise(double from, double millivolts) {
        for (int i = (int) (from * hz); i < last().length; i++) {
            last()[i] += units(millivolts);
        }
        return this;
    }

    /** Holds the last lead at one value. */
    SyntheticEcg hold(double from, double to, double millivolts) {
        Arrays.fill(last(), (int) (from * hz), (int) (to * hz), units(millivolts));
        return this;
    }

    /** The last lead has no samples there. */
    SyntheticEcg missing(double from, double to) {
        Arrays.fill(last(), (int) (from * hz), (int) (to * hz), Block.MISSING);
        return this;
    }

    private int[] last() {
        return leads.get(leads.size() - 1);
    }

    SyntheticEcg reference(Beat.Kind... kinds) {
        for (int i = 0; i < kinds.length; i++) {
            reference.add(new Beat(Math.round(times[i] * hz), kinds[i]));
        }
        return this;
    }

    /** Cuts into blocks; what is in the gap is not recorded. */
    SyntheticEcg cut(double gapFrom, double gapTo) {
        int length = leads.get(0).length;
        int from = (int) (gapFrom * hz);
        int to = (int) (gapTo * hz);
        for (int at = 0; at < length; at = at == from ? to : at) {
            int end = Math.min(at + BLOCK, at < from ? from : length);
            int first = at;
            blocks.add(
                    new Block(
                            at,
                            leads.stream()
                                    .map(lead -> Arrays.copyOfRange(lead, first, end))
                                    .toArray(int[][]::new)));
            at = end;
        }
        return this;
    }

    SyntheticEcg cut() {
        return cut(seconds + 1, seconds + 1);
    }

    @Override
    public RecordingHeader header() {
        var described = new ArrayList<Lead>();
        for (int i = 1; i <= leads.size(); i++) {
            described.add(new Lead("lead " + i, sensitivity, 0, 12));
        }
        return new RecordingHeader(
                "synthetic",
                RecordingHeader.Identity.NONE,
                Optional.empty(),
                hz,
                described,
                -1,
                "",
                List.of());
    }

    @Override
    public Optional<Block> next() {
        return Optional.ofNullable(blocks.poll());
    }

    @Override
    public List<Beat> referenceBeats() {
        return reference;
    }

    @Override
    public void close() {
        blocks.clear();
    }
}

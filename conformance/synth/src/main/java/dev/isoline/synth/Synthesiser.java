package dev.isoline.synth;

import java.io.IOException;
import java.util.List;
import java.util.Random;

/** Makes an ECG whose every beat is known; one frame in memory, whatever the length. */
public final class Synthesiser {

    /** Seconds a beat reaches before and after its R peak. */
    private static final double BEFORE = 0.35;

    private static final double AFTER = 0.65;

    /** Of a faster rhythm P and T move towards the QRS complex, with the root of the interval. */
    private static final double ROOMY = 0.6;

    private final EcgPlan plan;
    private final List<TrueBeat> beats;
    private final List<LeadShape> shapes;

    public Synthesiser(EcgPlan plan) {
        this.plan = plan;
        this.beats = Rhythm.of(plan);
        this.shapes = plan.leads().stream().map(LeadShape::of).toList();
    }

    /** In order of time. */
    public List<TrueBeat> beats() {
        return beats;
    }

    public Truth truth() {
        return Truth.of(plan, beats);
    }

    /** Writes the whole recording; each call gives the same samples. */
    public void writeTo(FrameSink sink) throws IOException {
        var random = new Random(plan.seed() + 1);
        var troubles = new Random(plan.seed() + 2);
        var frame = new int[shapes.size()];
        int first = 0;
        for (long n = 0; n < plan.samples(); n++) {
            while (first < beats.size() && seconds(n, first) > AFTER) {
                first++;
            }
            for (int lead = 0; lead < frame.length; lead++) {
                double millivolts = heart(n, first, lead) + noise(n, lead, random);
                frame[lead] = troubled(millivolts, lead, (double) n / plan.hz(), troubles);
            }
            sink.frame(frame);
        }
    }

    private double heart(long sample, int first, int lead) {
        double millivolts = 0;
        for (int b = first; b < beats.size() && seconds(sample, b) >= -BEFORE; b++) {
            millivolts += beat(b, shapes.get(lead), seconds(sample, b));
        }
        return plan.amplitude() * millivolts;
    }

    private double beat(int b, LeadShape shape, double seconds) {
        var beat = beats.get(b);
        boolean fibrillates = plan.fibrillates((double) beat.sample() / plan.hz());
        return fibrillates && beat.kind() == BeatKind.NORMAL
                ? shape.withoutP(seconds, room(b))
                : shape.millivolts(beat.kind(), seconds, room(b - 1), room(b));
    }

    /** How far P and T spread in the interval after a beat, 1 where there is room enough. */
    private double room(int b) {
        if (b < 0 || b + 1 >= beats.size()) {
            return 1;
        }
        long interval = beats.get(b + 1).sample() - beats.get(b).sample();
        return Math.min(1, Math.sqrt((double) interval / plan.hz() / ROOMY));
    }

    private double noise(long sample, int lead, Random random) {
        double time = (double) sample / plan.hz();
        Noise noise = plan.noise();
        return noise.wander() * Math.sin(2 * Math.PI * Noise.WANDER_HZ * time + lead)
                + noise.mains() * Math.sin(2 * Math.PI * Noise.MAINS_HZ * time)
                + noise.muscle() * random.nextGaussian();
    }

    /** What the converter gives of a lead's millivolts while its troubles last. */
    private int troubled(double millivolts, int lead, double time, Random random) {
        double sum = millivolts;
        for (Trouble trouble : plan.troubles()) {
            if (trouble.lead() == lead && trouble.when().holds(time)) {
                if (trouble.isHeld()) {
                    return trouble.heldAt();
                }
                sum += trouble.millivolts(time, random);
            }
        }
        return digital(sum);
    }

    private double seconds(long sample, int beat) {
        return (double) (sample - beats.get(beat).sample()) / plan.hz();
    }

    private static int digital(double millivolts) {
        long units = Math.round(millivolts * EcgPlan.UNITS_PER_MILLIVOLT);
        return (int) Math.max(EcgPlan.LOWEST, Math.min(EcgPlan.HIGHEST, units));
    }
}

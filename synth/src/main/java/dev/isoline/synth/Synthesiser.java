package dev.isoline.synth;

import java.io.IOException;
import java.util.List;
import java.util.Random;

/** Makes an ECG whose every beat is known; one frame in memory, whatever the length. */
public final class Synthesiser {

    /** Seconds a beat reaches before and after its R peak. */
    private static final double BEFORE = 0.35;

    private static final double AFTER = 0.65;

    private final EcgPlan plan;
    private final List<TrueBeat> beats;
    private final List<LeadShape> shapes;

    public Synthesiser(EcgPlan plan) {
        this.plan = plan;
        this.beats = Rhythm.of(plan);
        this.shapes = plan.leads().stream().map(LeadShape::of).toList();
    }

    public List<TrueBeat> beats() {
        return beats;
    }

    public Truth truth() {
        return Truth.of(plan, beats);
    }

    /** Writes the whole recording; each call gives the same samples. */
    public void writeTo(FrameSink sink) throws IOException {
        var random = new Random(plan.seed() + 1);
        var frame = new int[shapes.size()];
        int first = 0;
        for (long n = 0; n < plan.samples(); n++) {
            while (first < beats.size() && seconds(n, first) > AFTER) {
                first++;
            }
            for (int lead = 0; lead < frame.length; lead++) {
                frame[lead] = digital(heart(n, first, lead) + noise(n, lead, random));
            }
            sink.frame(frame);
        }
    }

    private double heart(long sample, int first, int lead) {
        double millivolts = 0;
        for (int b = first; b < beats.size() && seconds(sample, b) >= -BEFORE; b++) {
            millivolts += shapes.get(lead).millivolts(beats.get(b).kind(), seconds(sample, b));
        }
        return millivolts;
    }

    private double noise(long sample, int lead, Random random) {
        double time = (double) sample / plan.hz();
        Noise noise = plan.noise();
        return noise.wander() * Math.sin(2 * Math.PI * 0.19 * time + lead)
                + noise.mains() * Math.sin(2 * Math.PI * 50 * time)
                + noise.muscle() * random.nextGaussian();
    }

    private double seconds(long sample, int beat) {
        return (double) (sample - beats.get(beat).sample()) / plan.hz();
    }

    private static int digital(double millivolts) {
        long units = Math.round(millivolts * EcgPlan.UNITS_PER_MILLIVOLT);
        return (int) Math.max(EcgPlan.LOWEST, Math.min(EcgPlan.HIGHEST, units));
    }
}

package dev.isoline.synth;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Places the beats of a plan. */
final class Rhythm {

    /** Share of the sinus interval before a premature beat; below 80 %: ESC definitions. */
    private static final double PREMATURE = 0.65;

    /** A ventricular beat leaves the sinus rhythm alone: both intervals together are two cycles. */
    private static final double COMPENSATORY = 2 - PREMATURE;

    /** A fibrillating atrium's intervals, as a share of their mean: common practice, no source. */
    private static final double SHORTEST = 0.6;

    private static final double LONGEST = 1.4;
    private static final double BREATHS_PER_SECOND = 0.25;
    private static final double FIRST_BEAT = 0.6;

    private final EcgPlan plan;
    private final Random random;

    private Rhythm(EcgPlan plan) {
        this.plan = plan;
        this.random = new Random(plan.seed());
    }

    /** Every beat whose whole complex fits into the recording. */
    static List<TrueBeat> of(EcgPlan plan) {
        return new Rhythm(plan).beats();
    }

    private List<TrueBeat> beats() {
        var beats = new ArrayList<TrueBeat>();
        double time = FIRST_BEAT;
        for (int n = 0; time < plan.seconds() - FIRST_BEAT; n++) {
            beats.add(new TrueBeat(Math.round(time * plan.hz()), plan.kind(n)));
            time += interval(n, time);
        }
        return beats;
    }

    /** Seconds from beat n to the next. */
    private double interval(int n, double time) {
        double sinus = sinus(time);
        if (plan.fibrillates(time)) {
            return sinus * (SHORTEST + (LONGEST - SHORTEST) * random.nextDouble());
        }
        if (plan.pause().afterBeat() == n) {
            return plan.pause().seconds();
        }
        if (plan.kind(n + 1) != BeatKind.NORMAL) {
            return sinus * PREMATURE;
        }
        return plan.kind(n) == BeatKind.VENTRICULAR ? sinus * COMPENSATORY : sinus;
    }

    private double sinus(double time) {
        EcgPlan.Rate rate = plan.rate();
        double perMinute = rate.first() + (rate.last() - rate.first()) * time / plan.seconds();
        double breath = Math.sin(2 * Math.PI * BREATHS_PER_SECOND * time);
        return 60
                / perMinute
                * (1 + rate.breathing() * breath + rate.jitter() * random.nextGaussian());
    }
}

package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat.Kind;

/**
 * Whether beats of one shape are ventricular: by how much it differs from the normal one and how
 * early it comes.
 *
 * @param template the shape
 * @param share of all beats that has it, 0 to 1
 * @param difference area between it and the normal shape, over that of the normal shape
 * @param early median interval before it, over the usual one
 */
record VentricularShape(Template template, double share, double difference, double early) {

    /** Difference of beats that come in time. */
    private static final double DIFFERS = 1.4;

    private static final double EARLY_DIFFERS = 0.75;
    private static final double VERY_EARLY_DIFFERS = 1;

    /** A shape only one or two beats have must differ more, for disturbances have such. */
    private static final int FEW = 2;

    private static final double RARE = 0.4;

    /** A shape so frequent that comes in time is another way of conduction. */
    private static final double FREQUENT = 0.1;

    /** Below, all leads are too noisy to judge a shape that is not sharply repeated. */
    private static final double CLEAR = 0.2;

    private static final double REPEATED = 0.9;

    /** A beat that fits less does not have the shape, and in time it needs to fit better. */
    private static final double LOOSE = 0.75;

    private static final double ALIKE = 0.88;

    /** No beat is so large. */
    private static final double IMPOSSIBLE = 7;

    /** No ventricle answers earlier; what looks like a beat there is a disturbance. */
    private static final double TOO_EARLY = 0.38;

    /**
     * Class of one of its beats: V, Q or, until the rhythm has been looked at, N.
     *
     * @param ratio of the interval before it to the usual one
     * @param clarity of the clearest lead, 0 to 1
     * @param fit of it to the shape, at most 1
     */
    Kind kind(double ratio, double clarity, double fit) {
        if (!isDifferent(ratio)) {
            return Kind.N;
        }
        boolean clear = clarity > CLEAR || isRepeated() && fit > REPEATED;
        boolean alike = fit > (ratio < BeatClassifier.EARLY ? LOOSE : ALIKE);
        boolean possible = ratio > TOO_EARLY && difference < IMPOSSIBLE;
        return clear && alike && possible ? Kind.V : Kind.Q;
    }

    private boolean isRepeated() {
        return template.members() > FEW && template.fit() > REPEATED;
    }

    private boolean isDifferent(double ratio) {
        double earliness = (template.members() * early + ratio) / (template.members() + 1);
        if (share > FREQUENT && earliness > BeatClassifier.EARLY) {
            return false;
        }
        return difference > enough(earliness) + (template.members() <= FEW ? RARE : 0);
    }

    /** Less when early, but a very early supraventricular beat is conducted with aberration. */
    private static double enough(double earliness) {
        return Math.max(
                between(earliness, 0.5, VERY_EARLY_DIFFERS, 0.65, EARLY_DIFFERS),
                between(earliness, 0.8, EARLY_DIFFERS, 1, DIFFERS));
    }

    private static double between(double x, double fromX, double from, double toX, double to) {
        double way = Math.max(0, Math.min(1, (x - fromX) / (toX - fromX)));
        return from + way * (to - from);
    }
}

package dev.isoline.synth;

import java.util.List;
import java.util.Map;

/**
 * P, Q, R, S and T of each kind of beat in one lead. Heights and widths are textbook-like and ours
 * to choose: common practice, no source. A normal QRS lasts under 100 ms, a ventricular one over
 * 120 ms (ESC definition).
 */
final class LeadShape {

    // spotless:off
    private static final List<Wave> VENTRICULAR = List.of(
            new Wave(0.000,  1.40, 0.032), new Wave(0.095, -0.45, 0.035), new Wave(0.310, -0.40, 0.060));

    private static final Map<String, List<Wave>> NORMAL = Map.of(
            "MLII", List.of(
                    new Wave(-0.160,  0.12, 0.022), new Wave(-0.027, -0.10, 0.008), new Wave(0.000,  1.10, 0.011),
                    new Wave( 0.028, -0.22, 0.010), new Wave( 0.260,  0.26, 0.045)),
            "V5", List.of(
                    new Wave(-0.160,  0.08, 0.022), new Wave(-0.027, -0.12, 0.008), new Wave(0.000,  1.30, 0.011),
                    new Wave( 0.028, -0.30, 0.010), new Wave( 0.260,  0.30, 0.045)),
            "V1", List.of(
                    new Wave(-0.160,  0.06, 0.022), new Wave( 0.000,  0.35, 0.009), new Wave(0.024, -0.95, 0.012),
                    new Wave( 0.260, -0.10, 0.045)));
    // spotless:on

    /**
     * A premature supraventricular beat comes from elsewhere in the atria: its P is upside down.
     */
    private static final Wave ECTOPIC_P = new Wave(-0.130, -0.08, 0.020);

    private final List<Wave> normal;

    private LeadShape(List<Wave> normal) {
        this.normal = normal;
    }

    static LeadShape of(String lead) {
        List<Wave> normal = NORMAL.get(lead);
        if (normal == null) {
            throw new IllegalArgumentException("No wave shape for lead " + lead);
        }
        return new LeadShape(normal);
    }

    /**
     * @param pull of the P wave towards the QRS complex, 1 at a slow rate, less at a fast one
     * @param push of the T wave, likewise
     */
    double millivolts(BeatKind kind, double seconds, double pull, double push) {
        return switch (kind) {
            case NORMAL ->
                    normal.get(0).millivolts(seconds / pull) + qrst(normal, 1, seconds, push);
            case VENTRICULAR -> qrst(VENTRICULAR, 0, seconds, push);
            case SUPRAVENTRICULAR ->
                    ECTOPIC_P.millivolts(seconds / pull) + qrst(normal, 1, seconds, push);
        };
    }

    /** An atrium that fibrillates has no P wave: the beat without it. */
    double withoutP(double seconds, double push) {
        return qrst(normal, 1, seconds, push);
    }

    private static double qrst(List<Wave> waves, int from, double seconds, double push) {
        int t = waves.size() - 1;
        double total = waves.get(t).millivolts(seconds / push);
        for (int i = from; i < t; i++) {
            total += waves.get(i).millivolts(seconds);
        }
        return total;
    }
}

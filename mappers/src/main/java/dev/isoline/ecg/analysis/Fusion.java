package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat.Kind;

/**
 * Which shapes are fusion: rare ones that are a mixture of the normal shape and of the one most
 * ventricular beats have.
 */
final class Fusion {

    /** Area between a mixture and the normal shape, over that of the normal shape. */
    private static final double LEAST_DIFFERENCE = 0.4;

    /** Of either shape in the mixture. */
    private static final double LEAST_SHARE = 0.2;

    /** Of all beats. */
    private static final double FREQUENT = 0.1;

    private final boolean[] fusion;

    /**
     * @param kinds of the beats so far
     */
    Fusion(Templates templates, int normal, Kind[] kinds) {
        fusion = new boolean[templates.count()];
        int ventricular = mostFrequentVentricular(templates, kinds);
        for (int i = 0; ventricular >= 0 && i < fusion.length; i++) {
            double way = templates.between(i, normal, ventricular);
            fusion[i] =
                    way > LEAST_SHARE
                            && way < 1 - LEAST_SHARE
                            && templates.difference(i, normal) > LEAST_DIFFERENCE
                            && templates.get(i).members() < FREQUENT * kinds.length;
        }
    }

    private static int mostFrequentVentricular(Templates templates, Kind[] kinds) {
        var counts = new int[templates.count()];
        int most = -1;
        for (int beat = 0; beat < kinds.length; beat++) {
            int template = templates.of(beat);
            if (kinds[beat] == Kind.V && ++counts[template] > (most < 0 ? 0 : counts[most])) {
                most = template;
            }
        }
        return most;
    }

    boolean is(int template) {
        return fusion[template];
    }
}

package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat;
import java.util.Arrays;

/**
 * Gives beats their classes. The shape most beats have, and that does not come early, is the normal
 * one, however wide. Beats whose shape differs from it are ventricular: much, or less and early.
 */
final class BeatClassifier {

    private static final double EARLY = 0.88;

    /** Area between a shape and the normal one, over that of the normal one. */
    private static final double DIFFERENT_EARLY = 0.85;

    private static final double DIFFERENT = 1.5;

    /** A shape only one or two beats have must differ more. */
    private static final double RARE = 0.4;

    private static final int FEW = 2;

    /** Below, all leads are too noisy to judge a shape. */
    private static final double CLEAR = 0.2;

    private final BeatShapes shapes;
    private final Templates templates;
    private final BeatRhythm rhythm;
    private final double[] early;
    private final double[] difference;
    private final int normal;

    BeatClassifier(BeatShapes shapes, Pace pace) {
        this.shapes = shapes;
        templates = new Templates(shapes, pace);
        rhythm = new BeatRhythm(shapes, pace);
        early = new double[templates.count()];
        difference = new double[templates.count()];
        for (int i = 0; i < early.length; i++) {
            early[i] = medianRatio(i);
        }
        normal = normal();
        for (int i = 0; i < early.length; i++) {
            difference[i] = difference(i);
        }
    }

    private double medianRatio(int template) {
        var ratios = new double[templates.get(template).members()];
        int count = 0;
        for (int beat = 0; beat < shapes.count(); beat++) {
            if (templates.of(beat) == template) {
                ratios[count++] = rhythm.ratio(beat);
            }
        }
        Arrays.sort(ratios);
        return count == 0 ? 1 : ratios[count / 2];
    }

    private int normal() {
        int normal = 0;
        double most = -1;
        for (int i = 0; i < early.length; i++) {
            double votes = templates.get(i).members() * (early[i] < EARLY ? 0.3 : 1);
            if (votes > most) {
                most = votes;
                normal = i;
            }
        }
        return normal;
    }

    private double difference(int template) {
        var weight = templates.get(template).meanWeight();
        var other = templates.get(normal).meanWeight();
        for (int lead = 0; lead < weight.length; lead++) {
            weight[lead] = Math.min(weight[lead], other[lead]) + 1e-6f;
        }
        var match = templates.match();
        match.beat(templates.get(normal).mean(), other);
        var window = match.window(0);
        match.beat(templates.get(template).mean(), weight);
        match.with(window);
        return match.areaBetween(window);
    }

    Beat.Kind kind(int beat) {
        return isVentricular(beat) ? Beat.Kind.V : Beat.Kind.N;
    }

    private boolean isVentricular(int beat) {
        int template = templates.of(beat);
        int members = templates.get(template).members();
        double ratio = (members * early[template] + rhythm.ratio(beat)) / (members + 1);
        double least = ratio < EARLY ? DIFFERENT_EARLY : DIFFERENT;
        return shapes.clarity(beat) > CLEAR
                && difference[template] > least + (members <= FEW ? RARE : 0);
    }
}

package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat.Kind;
import dev.isoline.ecg.RankedValue;
import java.util.Arrays;

/**
 * Gives beats their classes. The shape most beats have, and that does not come early, is the normal
 * one, however wide. Beats whose shape differs from it enough are ventricular, those between it and
 * the ventricular shape fusion; of the others, the early ones are supraventricular. A beat that
 * differs where noise or an impossible time forbids a judgement is unclassifiable.
 */
final class BeatClassifier {

    /** Of the usual interval; shapes that come in less come early. */
    static final double EARLY = 0.88;

    /** How little an early shape counts when the normal one is looked for. */
    private static final double EARLY_VOTE = 0.3;

    private final BeatShapes shapes;
    private final Templates templates;
    private final BeatRhythm rhythm;
    private final double[] early;
    private final Kind[] kinds;

    BeatClassifier(BeatShapes shapes, Pace pace) {
        this.shapes = shapes;
        templates = new Templates(shapes, pace);
        rhythm = new BeatRhythm(shapes, pace);
        early = new double[templates.count()];
        Arrays.setAll(early, this::medianRatio);
        int normal = normal();
        kinds = byShape(normal);
        var fusion = new Fusion(templates, normal, kinds);
        for (int beat = 0; beat < kinds.length; beat++) {
            int template = templates.of(beat);
            if (kinds[beat] == Kind.N && early[template] > EARLY && fusion.is(template)) {
                kinds[beat] = Kind.F;
            }
        }
        new AtrialRhythm(shapes, rhythm, kinds, pace).mark();
    }

    private double medianRatio(int template) {
        var ratios = new double[templates.get(template).members()];
        int count = 0;
        for (int beat = 0; beat < shapes.count(); beat++) {
            if (templates.of(beat) == template) {
                ratios[count++] = rhythm.ratio(beat);
            }
        }
        return count == 0 ? 1 : RankedValue.middle(ratios, count);
    }

    private int normal() {
        int normal = 0;
        double most = -1;
        for (int i = 0; i < early.length; i++) {
            double votes = templates.get(i).members() * (early[i] < EARLY ? EARLY_VOTE : 1);
            if (votes > most) {
                most = votes;
                normal = i;
            }
        }
        return normal;
    }

    private Kind[] byShape(int normal) {
        var rules = new VentricularShape[early.length];
        for (int i = 0; i < rules.length; i++) {
            double share = (double) templates.get(i).members() / shapes.count();
            double difference = templates.difference(i, normal);
            rules[i] = new VentricularShape(templates.get(i), share, difference, early[i]);
        }
        var kinds = new Kind[shapes.count()];
        for (int i = 0; i < kinds.length; i++) {
            kinds[i] =
                    rules[templates.of(i)].kind(
                            rhythm.ratio(i), shapes.clarity(i), templates.fit(i));
        }
        return kinds;
    }

    Kind kind(int beat) {
        return kinds[beat];
    }
}

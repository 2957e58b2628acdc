package dev.isoline.ecg.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * The shapes that occur among beats, and which beat has which. Two passes: the first lets templates
 * arise, nearly equal ones are merged, the second gives every beat its own.
 */
final class Templates {

    /** A beat that fits no template this well founds one. */
    private static final double ALIKE = 0.88;

    /** Templates alike to this degree are one. */
    private static final double SAME = 0.92;

    /** No other template is looked at. */
    private static final double CERTAIN = 0.92;

    /** A beat that fits worse does not pull its template. */
    private static final double LOOSE = 0.78;

    private static final int MOST = 40;
    private static final float LITTLE = 1e-6f;

    /** Of what a mixture differs from the first of two shapes. */
    private static final double EXPLAINED = 0.65;

    private final BeatShapes shapes;
    private final ShapeMatch match;
    private final List<Template> templates = new ArrayList<>();
    private final byte[] own;
    private final float[] fits;
    private double fit;
    private int shift;

    Templates(BeatShapes shapes, Pace pace) {
        this.shapes = shapes;
        match = new ShapeMatch(shapes, pace);
        own = new byte[shapes.count()];
        fits = new float[own.length];
        arise();
        merge();
        assign();
    }

    private void arise() {
        int last = 0;
        for (int beat = 0; beat < own.length; beat++) {
            int best = best(beat, last);
            if (fit >= ALIKE) {
                templates.get(best).follow(match.window(shift));
            } else if (templates.size() < MOST) {
                best = templates.size();
                templates.add(new Template(match.window(0), shapes.leads()));
            }
            last = best;
            own[beat] = (byte) best;
        }
    }

    /**
     * The template a beat fits best, tried from a likely one on; -1 without any. Every shift is
     * tried only where none fits well near by.
     */
    private int best(int beat, int likely) {
        match.beat(shapes.shape(beat), shapes.weight(beat));
        int best = best(likely, template -> match.roughly(template, fit));
        return fit < ALIKE ? best(likely, match::with) : best;
    }

    private int best(int likely, ToDoubleFunction<Template> fitting) {
        int best = -1;
        fit = -1;
        for (int i = 0; i < templates.size() && fit < CERTAIN; i++) {
            int at = i == 0 ? likely : i <= likely ? i - 1 : i;
            double found = fitting.applyAsDouble(templates.get(at));
            if (found > fit) {
                fit = found;
                shift = match.shift();
                best = at;
            }
        }
        return best;
    }

    private void merge() {
        for (int i = 0; i < templates.size(); i++) {
            for (int j = templates.size() - 1; j > i; j--) {
                if (templates.get(i).like(templates.get(j)) > SAME) {
                    templates.get(i).merge(templates.remove(j));
                    renumber(j, i);
                }
            }
        }
    }

    private void renumber(int gone, int now) {
        for (int beat = 0; beat < own.length; beat++) {
            own[beat] = (byte) (own[beat] == gone ? now : own[beat] - (own[beat] > gone ? 1 : 0));
        }
    }

    private void assign() {
        templates.forEach(t -> t.count(shapes.leads() * shapes.length(), shapes.leads()));
        for (int beat = 0; beat < own.length; beat++) {
            int best = best(beat, own[beat]);
            own[beat] = (byte) best;
            fits[beat] = (float) fit;
            var template = templates.get(best);
            template.member(shapes.shape(beat), shapes.weight(beat), shift, fit);
            if (fit > LOOSE) {
                template.follow(match.window(shift));
            }
        }
    }

    int count() {
        return templates.size();
    }

    Template get(int template) {
        return templates.get(template);
    }

    /** Which template a beat has. */
    int of(int beat) {
        return own[beat];
    }

    /** How well a beat fits it, at most 1. */
    double fit(int beat) {
        return fits[beat];
    }

    /**
     * Area between the mean shapes of two templates over that of the second, on the leads that both
     * can be judged on.
     */
    double difference(int template, int from) {
        var mean = templates.get(from).mean();
        var weight = templates.get(template).meanWeight();
        var other = templates.get(from).meanWeight();
        for (int lead = 0; lead < weight.length; lead++) {
            weight[lead] = Math.min(weight[lead], other[lead]) + LITTLE;
        }
        match.beat(mean, weight);
        var start = new Template(match.window(0), shapes.leads());
        match.beat(templates.get(template).mean(), weight);
        match.with(start);
        return match.areaBetween(start.window());
    }

    /**
     * How far a template is on the way from one to another, 0 to 1; not a number when it is off
     * that way, so no mixture of the two.
     */
    double between(int template, int from, int to) {
        var start = templates.get(from).mean();
        var weight = templates.get(template).meanWeight();
        match.beat(start, weight);
        var base = match.window(0);
        var mixed = over(template, base, weight);
        var other = over(to, base, weight);
        double along = 0;
        double way = 1e-9;
        double off = 1e-9;
        for (int i = 0; i < base.length; i++) {
            along += (mixed[i] - base[i]) * (other[i] - base[i]);
            way += (other[i] - base[i]) * (other[i] - base[i]);
            off += (mixed[i] - base[i]) * (mixed[i] - base[i]);
        }
        return along * along / way > EXPLAINED * off ? along / way : Double.NaN;
    }

    private float[] over(int template, float[] base, float[] weight) {
        match.beat(templates.get(template).mean(), weight);
        match.with(new Template(base, shapes.leads()));
        return match.window(match.shift());
    }
}

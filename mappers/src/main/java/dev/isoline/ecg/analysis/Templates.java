package dev.isoline.ecg.analysis;

import java.util.ArrayList;
import java.util.List;

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
    private static final double CERTAIN = 0.96;

    /** A beat that fits worse does not pull its template. */
    private static final double LOOSE = 0.78;

    private static final int MOST = 40;

    private final BeatShapes shapes;
    private final ShapeMatch match;
    private final List<Template> templates = new ArrayList<>();
    private final byte[] own;
    private double fit;
    private int shift;
    private int last;

    Templates(BeatShapes shapes, Pace pace) {
        this.shapes = shapes;
        match = new ShapeMatch(shapes, pace);
        own = new byte[shapes.count()];
        arise();
        merge();
        assign();
    }

    private void arise() {
        for (int beat = 0; beat < own.length; beat++) {
            int best = best(beat);
            if (fit >= ALIKE) {
                templates.get(best).follow(match.window(shift));
            } else if (templates.size() < MOST) {
                last = templates.size();
                templates.add(new Template(match.window(0)));
            }
        }
    }

    /** The template a beat fits best, tried from the last one on; -1 without any. */
    private int best(int beat) {
        match.beat(shapes.shape(beat), shapes.weight(beat));
        int best = -1;
        fit = -1;
        for (int i = 0; i < templates.size() && fit < CERTAIN; i++) {
            int at = i == 0 ? last : i <= last ? i - 1 : i;
            double found = match.with(templates.get(at).window());
            if (found > fit) {
                fit = found;
                shift = match.shift();
                best = at;
            }
        }
        last = Math.max(0, best);
        return best;
    }

    private void merge() {
        for (int i = 0; i < templates.size(); i++) {
            for (int j = templates.size() - 1; j > i; j--) {
                if (templates.get(i).like(templates.get(j)) > SAME) {
                    templates.get(i).merge(templates.remove(j));
                }
            }
        }
        last = 0;
    }

    private void assign() {
        templates.forEach(t -> t.count(shapes.leads() * shapes.length(), shapes.leads()));
        for (int beat = 0; beat < own.length; beat++) {
            int best = best(beat);
            own[beat] = (byte) best;
            var template = templates.get(best);
            template.member(shapes.shape(beat), shapes.weight(beat), shapes.length(), shift);
            if (fit > LOOSE) {
                template.follow(match.window(shift));
            }
        }
        last = 0;
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

    /** For comparing mean shapes. */
    ShapeMatch match() {
        return match;
    }
}

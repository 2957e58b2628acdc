package dev.isoline.ecg.analysis;

import dev.isoline.ecg.BeatSeries;
import java.util.List;

/**
 * Classes of all beats of a recording, a few thousand at a time: each beat is judged among a
 * thousand around it at least, so shapes may change over days and memory stays small.
 */
final class BeatClasses {

    private static final int JUDGED = 4096;
    private static final int SETTLED = 3072;

    private final Pace pace;
    private final List<DetectionLead> leads;
    private final BeatShapes shapes;
    private final BeatSeries beats = new BeatSeries();

    BeatClasses(Pace pace, List<DetectionLead> leads) {
        this.pace = pace;
        this.leads = leads;
        shapes = new BeatShapes(pace, leads.size(), JUDGED);
    }

    /** The next beat, while the leads still remember it. */
    void add(long at, boolean first, LeadWeights weights) {
        if (shapes.isFull()) {
            judge(SETTLED);
        }
        var weight = new float[leads.size()];
        for (int i = 0; i < weight.length; i++) {
            weight[i] = (float) weights.weight(i);
        }
        shapes.add(at, first, weights.clearest(), weight, shape(at));
    }

    private float[] shape(long at) {
        int step = pace.step();
        int length = shapes.length();
        float scale = 1f / (step * step);
        var shape = new float[leads.size() * length];
        for (int lead = 0; lead < leads.size(); lead++) {
            var signal = leads.get(lead).signal();
            for (int i = 0; i < length; i++) {
                long position = at + (long) (i - shapes.before()) * step;
                shape[lead * length + i] = scale * signal.smooth(position, step, step);
            }
        }
        return shape;
    }

    private void judge(int beatsSettled) {
        shapes.normalise();
        var classifier = new BeatClassifier(shapes, pace);
        for (int i = 0; i < beatsSettled; i++) {
            int second = (int) (shapes.at(i) / pace.hz());
            if (leads.stream().anyMatch(lead -> lead.usable(second, second))) {
                beats.add(shapes.at(i), classifier.kind(i));
            }
        }
        shapes.forget(beatsSettled);
    }

    /** All beats; none follows. */
    BeatSeries finish() {
        if (shapes.count() > 0) {
            judge(shapes.count());
        }
        return beats;
    }
}

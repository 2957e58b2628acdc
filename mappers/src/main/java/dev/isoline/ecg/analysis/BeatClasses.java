package dev.isoline.ecg.analysis;

import dev.isoline.ecg.BeatSeries;
import java.util.List;
import java.util.concurrent.CompletableFuture;

/**
 * Classes of all beats of a recording, a few thousand at a time: each beat is judged among a
 * thousand around it at least, so shapes may change over days and memory stays small. Some are
 * judged on a thread of their own while the next are found.
 */
final class BeatClasses {

    private static final int JUDGED = 4096;
    private static final int SETTLED = 3072;

    private final Pace pace;
    private final List<DetectionLead> leads;
    private final BeatShapes found;
    private final BeatShapes judged;
    private final BeatSeries beats = new BeatSeries();
    private CompletableFuture<Void> judging = CompletableFuture.completedFuture(null);
    private int room = JUDGED;

    BeatClasses(Pace pace, List<DetectionLead> leads) {
        this.pace = pace;
        this.leads = leads;
        found = new BeatShapes(pace, leads.size(), JUDGED);
        judged = new BeatShapes(pace, leads.size(), JUDGED);
    }

    /** The next beat, while the leads still remember it. */
    void add(long at, boolean first, LeadWeights weights) {
        if (found.count() == room) {
            handOver();
            judging = CompletableFuture.runAsync(() -> judge(SETTLED));
            room = SETTLED;
        }
        var weight = new float[leads.size()];
        for (int i = 0; i < weight.length; i++) {
            weight[i] = (float) weights.weight(i);
        }
        found.add(at, first, weights.clearest(), weight, shape(at));
    }

    private float[] shape(long at) {
        int step = pace.step();
        int length = found.length();
        float scale = 1f / (step * step);
        var shape = new float[leads.size() * length];
        for (int lead = 0; lead < leads.size(); lead++) {
            var signal = leads.get(lead).signal();
            for (int i = 0; i < length; i++) {
                long position = at + (long) (i - found.before()) * step;
                shape[lead * length + i] = scale * signal.smooth(position, step, step);
            }
        }
        return shape;
    }

    /** Waits until those before are judged: no more than two portions are in memory. */
    private void handOver() {
        judging.join();
        judged.addAll(found);
        found.forget(found.count());
    }

    private void judge(int beatsSettled) {
        judged.normalise();
        var classifier = new BeatClassifier(judged, pace);
        for (int i = 0; i < beatsSettled; i++) {
            beats.add(judged.at(i), classifier.kind(i));
        }
        judged.forget(beatsSettled);
    }

    /** All beats that a lead could be used at; none follows. */
    BeatSeries finish() {
        handOver();
        if (judged.count() > 0) {
            judge(judged.count());
        }
        beats.keep(sample -> DetectionLead.anyUsable(leads, (int) (sample / pace.hz())));
        return beats;
    }
}

package dev.isoline.ecg.analysis;

import dev.isoline.ecg.summary.Disturbance;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.Map;

/** The seconds of a lead by what was found in them, one bit each. */
final class QualityMarks {

    private final BitSet recorded = new BitSet();
    private final BitSet unusable = new BitSet();
    private final Map<Disturbance, BitSet> disturbed = new EnumMap<>(Disturbance.class);

    QualityMarks() {
        for (var kind : Disturbance.values()) {
            disturbed.put(kind, new BitSet());
        }
    }

    void recorded(int second) {
        recorded.set(second);
    }

    /** Something disturbs, but the second can be measured. */
    void found(Disturbance kind, int second) {
        disturbed.get(kind).set(second);
    }

    /** From one second to another, both included: nothing can be measured there. */
    void unusable(Disturbance kind, int from, int to) {
        disturbed.get(kind).set(from, to + 1);
        unusable.set(from, to + 1);
        if (kind == Disturbance.LEAD_OFF) { // at an end of the range too, but for too long
            disturbed.get(Disturbance.SATURATED).clear(from, to + 1);
        }
    }

    boolean isUsable(int second) {
        return !unusable.get(second);
    }

    BitSet unusable() {
        return unusable;
    }

    /** Number of the second after the last one recorded. */
    int seconds() {
        return recorded.length();
    }

    int recorded(int from, int to) {
        return recorded.get(from, to).cardinality();
    }

    /** Recorded seconds from one up to, and without, another that can be measured. */
    int usable(int from, int to) {
        var usable = recorded.get(from, to);
        usable.andNot(unusable.get(from, to));
        return usable.cardinality();
    }

    Map<Disturbance, Integer> disturbed(int from, int to) {
        var seconds = new EnumMap<Disturbance, Integer>(Disturbance.class);
        disturbed.forEach(
                (kind, marks) -> {
                    var found = marks.get(from, to);
                    found.and(recorded.get(from, to));
                    if (!found.isEmpty()) {
                        seconds.put(kind, found.cardinality());
                    }
                });
        return seconds;
    }
}

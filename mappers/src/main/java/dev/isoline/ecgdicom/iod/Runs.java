package dev.isoline.ecgdicom.iod;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Stretch;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Three or more beats of one class in a row (common practice, no source). */
final class Runs {

    private static final int SHORTEST = 3;

    private Runs() {}

    /** Most beats first, then in time order. */
    static List<Stretch> of(Beat.Kind kind, List<Beat> beats) {
        record Run(int beats, Stretch stretch) {}
        var runs = new ArrayList<Run>();
        int first = 0;
        for (int i = 0; i <= beats.size(); i++) {
            if (i == beats.size() || beats.get(i).kind() != kind) {
                if (i - first >= SHORTEST) {
                    long from = beats.get(first).sample();
                    runs.add(new Run(i - first, new Stretch(from, beats.get(i - 1).sample() + 1)));
                }
                first = i + 1;
            }
        }
        return runs.stream()
                .sorted(Comparator.comparingInt(Run::beats).reversed())
                .map(Run::stretch)
                .toList();
    }
}

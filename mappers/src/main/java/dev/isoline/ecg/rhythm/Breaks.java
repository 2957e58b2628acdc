package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.Stretch;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What no interval may reach across: gaps, flutter and, where the program found the beats itself,
 * stretches without a usable lead. A person who marked a beat there could see it.
 */
final class Breaks {

    private Breaks() {}

    /** In order of time, none touching the next. */
    static List<Stretch> of(BeatTrack track) {
        var all = new ArrayList<Stretch>(track.flutter());
        if (track.origin() != BeatTrack.Origin.REFERENCE) {
            all.addAll(track.unusable());
        }
        all.addAll(gaps(track.recorded()));
        all.sort(Comparator.comparingLong(Stretch::from));
        return joined(all);
    }

    private static List<Stretch> gaps(List<Stretch> recorded) {
        var gaps = new ArrayList<Stretch>();
        for (int i = 1; i < recorded.size(); i++) {
            gaps.add(new Stretch(recorded.get(i - 1).to(), recorded.get(i).from()));
        }
        return gaps;
    }

    private static List<Stretch> joined(List<Stretch> sorted) {
        var joined = new ArrayList<Stretch>();
        for (var next : sorted) {
            int last = joined.size() - 1;
            if (last >= 0 && next.from() <= joined.get(last).to()) {
                var before = joined.get(last);
                joined.set(last, new Stretch(before.from(), Math.max(before.to(), next.to())));
            } else {
                joined.add(next);
            }
        }
        return joined;
    }
}

package dev.isoline.ecgdicom.annotation;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Stretch;
import dev.isoline.ecgdicom.annotation.WaveformAnnotation.Range;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Beats as one item per class with all their positions, or as few as their number allows. */
final class BeatPositions {

    private final List<Beat> beats;

    /**
     * @param beats in time order
     */
    BeatPositions(List<Beat> beats) {
        this.beats = beats;
    }

    List<WaveformAnnotation> of(Stretch object) {
        var annotations = new ArrayList<WaveformAnnotation>();
        int from = firstFrom(object.from());
        int to = firstFrom(object.to());
        for (Beat.Kind kind : Beat.Kind.values()) {
            long[] positions =
                    beats.subList(from, to).stream()
                            .filter(beat -> beat.kind() == kind)
                            .mapToLong(beat -> beat.sample() - object.from() + 1)
                            .toArray();
            annotations.addAll(items(kind, positions));
        }
        return annotations;
    }

    private static List<WaveformAnnotation> items(Beat.Kind kind, long[] positions) {
        var items = new ArrayList<WaveformAnnotation>();
        for (int from = 0; from < positions.length; from += Positions.MOST) {
            int to = Math.min(positions.length, from + Positions.MOST);
            long[] part = Arrays.copyOfRange(positions, from, to);
            Range range = part.length == 1 ? Range.POINT : Range.MULTIPOINT;
            items.add(WaveformAnnotation.of(BeatCode.of(kind)).at(range, part));
        }
        return items;
    }

    /** Number of the first beat at the sample or after it. */
    int firstFrom(long sample) {
        int low = 0;
        int high = beats.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (beats.get(middle).sample() < sample) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    int count() {
        return beats.size();
    }

    long sample(int beat) {
        return beats.get(beat).sample();
    }
}

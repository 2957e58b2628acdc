package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat;
import dev.isoline.synth.BeatKind;
import dev.isoline.synth.TrueBeat;
import java.util.List;

/** Found beats beside true ones, one to one within 60 ms: all of them, and those of one class. */
final class BeatScore {

    private static final double WINDOW_SECONDS = 0.06;

    private final BeatKind trueKind;
    private final Beat.Kind foundKind;
    private int hits;
    private int missed;
    private int wrong;
    private int classHits;
    private int classMissed;
    private int classWrong;

    BeatScore(BeatKind trueKind, Beat.Kind foundKind) {
        this.trueKind = trueKind;
        this.foundKind = foundKind;
    }

    void add(List<Beat> found, List<TrueBeat> beats, int hz) {
        long window = Math.round(WINDOW_SECONDS * hz);
        int next = 0;
        for (var beat : beats) {
            while (next < found.size() && found.get(next).sample() < beat.sample() - window) {
                extra(found.get(next++));
            }
            if (next < found.size() && found.get(next).sample() <= beat.sample() + window) {
                hit(beat, found.get(next++));
            } else {
                miss(beat);
            }
        }
        found.subList(next, found.size()).forEach(this::extra);
    }

    private void hit(TrueBeat beat, Beat found) {
        hits++;
        boolean is = beat.kind() == trueKind;
        boolean said = found.kind() == foundKind;
        classHits += is && said ? 1 : 0;
        classMissed += is && !said ? 1 : 0;
        classWrong += !is && said ? 1 : 0;
    }

    private void miss(TrueBeat beat) {
        missed++;
        classMissed += beat.kind() == trueKind ? 1 : 0;
    }

    private void extra(Beat found) {
        wrong++;
        classWrong += found.kind() == foundKind ? 1 : 0;
    }

    int missed() {
        return missed;
    }

    int wrong() {
        return wrong;
    }

    /** Percent of the class' beats that were found as such. */
    double sensitivity() {
        return 100.0 * classHits / (classHits + classMissed);
    }

    /** Percent of the beats found as of the class that are. */
    double predictivity() {
        return 100.0 * classHits / (classHits + classWrong);
    }

    @Override
    public String toString() {
        return "%d beats, %d missed, %d wrong; class %s: Se %.1f, +P %.1f"
                .formatted(hits + missed, missed, wrong, foundKind, sensitivity(), predictivity());
    }
}

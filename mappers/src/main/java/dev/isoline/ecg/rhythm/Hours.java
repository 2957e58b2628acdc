package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Stretch;
import dev.isoline.ecg.summary.HeartRates.Hour;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** The started hours of a recording: beats by class, analysable time, rate. */
final class Hours {

    private static final double SECONDS = 3600;

    private final double hz;
    private final int started;
    private final long[][] beats = new long[Beat.Kind.values().length][];
    private final long[] analysable;

    Hours(BeatTrack track) {
        hz = track.hz();
        started = (int) Math.ceil(track.end() / hz / SECONDS);
        analysable = new long[started];
        track.recorded().forEach(stretch -> add(stretch, 1));
        track.unusable().forEach(stretch -> add(stretch, -1));
        for (int kind = 0; kind < beats.length; kind++) {
            beats[kind] = new long[started];
        }
        for (var beat : track.beats()) {
            beats[beat.kind().ordinal()][hour(beat.sample())]++;
        }
    }

    private int hour(long sample) {
        return (int) (sample / hz / SECONDS);
    }

    private void add(Stretch stretch, int sign) {
        for (int hour = hour(stretch.from()); hour < started; hour++) {
            long from = Math.max(stretch.from(), begins(hour));
            long to = Math.min(stretch.to(), begins(hour + 1));
            if (to <= from) {
                return;
            }
            analysable[hour] += sign * (to - from);
        }
    }

    private long begins(int hour) {
        return (long) Math.ceil(hour * SECONDS * hz);
    }

    int started() {
        return started;
    }

    /** Of a class in an hour. */
    long beats(Beat.Kind kind, int hour) {
        return beats[kind.ordinal()][hour];
    }

    Duration analysable() {
        long samples = 0;
        for (long hour : analysable) {
            samples += hour;
        }
        return time(samples);
    }

    /** One entry per started hour. */
    List<Hour> entries(Rates rates) {
        var entries = new ArrayList<Hour>();
        for (int hour = 0; hour < started; hour++) {
            long all = 0;
            for (var kind : beats) {
                all += kind[hour];
            }
            entries.add(
                    new Hour(
                            Duration.ofHours(hour),
                            time(analysable[hour]),
                            all,
                            beats(Beat.Kind.V, hour),
                            beats(Beat.Kind.S, hour),
                            rates.hour(hour)));
        }
        return List.copyOf(entries);
    }

    private Duration time(long samples) {
        return Duration.ofNanos(Math.round(samples * 1e9 / hz));
    }
}

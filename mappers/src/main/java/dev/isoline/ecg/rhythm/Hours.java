package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Stretch;
import dev.isoline.ecg.summary.Ectopy.MostInHour;
import dev.isoline.ecg.summary.HeartRates.Hour;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;

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

    private long beats(Beat.Kind kind, int hour) {
        return beats[kind.ordinal()][hour];
    }

    /** Of a class in all hours. */
    long beats(Beat.Kind kind) {
        return LongStream.of(beats[kind.ordinal()]).sum();
    }

    /** The first of the hours that have most of a class. */
    Optional<MostInHour> most(Beat.Kind kind) {
        int most = -1;
        for (int hour = 0; hour < started; hour++) {
            if (beats(kind, hour) > (most < 0 ? 0 : beats(kind, most))) {
                most = hour;
            }
        }
        return most < 0
                ? Optional.empty()
                : Optional.of(new MostInHour(Duration.ofHours(most), beats(kind, most)));
    }

    /** Mean over the analysable time; empty when there is none. */
    Optional<Double> perHour(long count) {
        double inHours = analysable().toNanos() / 1e9 / SECONDS;
        return inHours > 0 ? Optional.of(count / inHours) : Optional.empty();
    }

    Duration analysable() {
        return time(LongStream.of(analysable).sum());
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

package dev.isoline.ecg.summary;

import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The episodes of a recording.
 *
 * @param list in order of time, of each kind at most {@link #MOST}: the longest
 * @param burdens of each kind that was looked for, also where there is none; kinds that need
 *     classified beats are missing when nobody classified them
 */
public record Episodes(List<Episode> list, Map<EpisodeKind, Burden> burdens) {

    /** Of a kind with more, only the longest are listed; {@link Burden} counts all. */
    public static final int MOST = 1000;

    /**
     * All episodes of one kind.
     *
     * @param episodes number of them
     * @param beats in them
     * @param time in them
     * @param percent of the analysable time; 0 when there is none
     */
    public record Burden(long episodes, long beats, Duration time, double percent) {

        public static final Burden NONE = new Burden(0, 0, Duration.ZERO, 0);
    }

    /** The listed ones of a kind, in order of time. */
    public List<Episode> of(EpisodeKind kind) {
        return list.stream().filter(episode -> episode.kind() == kind).toList();
    }

    /** Of a kind; nothing when it was not looked for. */
    public Burden burden(EpisodeKind kind) {
        return burdens.getOrDefault(kind, Burden.NONE);
    }

    /**
     * The most telling ones of a kind: the fastest and, as far as there is room, the longest.
     *
     * @param most of them
     * @return in order of time
     */
    public List<Episode> foremost(EpisodeKind kind, int most) {
        var all = of(kind);
        var fastest =
                all.stream()
                        .filter(episode -> episode.rates().isPresent())
                        .max(Comparator.comparing(episode -> episode.rates().get().mean()));
        var longest = all.stream().sorted(Comparator.comparing(Episode::duration).reversed());
        return Stream.concat(fastest.stream(), longest)
                .distinct()
                .limit(most)
                .sorted(Comparator.comparing(Episode::start))
                .toList();
    }
}

package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.Episodes;
import dev.isoline.ecg.summary.Episodes.Burden;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;

/** Collects episodes: counts all, keeps the longest of each kind, so that memory stays bounded. */
final class EpisodeLog {

    private static final Comparator<Episode> SHORTEST_FIRST =
            Comparator.comparing(Episode::duration)
                    .thenComparing(Comparator.comparing(Episode::start).reversed());

    private final Map<EpisodeKind, PriorityQueue<Episode>> kept = new EnumMap<>(EpisodeKind.class);
    private final Map<EpisodeKind, Burden> burdens = new EnumMap<>(EpisodeKind.class);
    private final Duration analysable;

    EpisodeLog(Duration analysable) {
        this.analysable = analysable;
    }

    /** Says that a kind is looked for, also where none is found. */
    void lookFor(EpisodeKind... kinds) {
        for (var kind : kinds) {
            burdens.putIfAbsent(kind, Burden.NONE);
        }
    }

    void add(Episode episode) {
        burdens.merge(episode.kind(), burden(episode), this::sum);
        var queue =
                kept.computeIfAbsent(episode.kind(), kind -> new PriorityQueue<>(SHORTEST_FIRST));
        queue.add(episode);
        if (queue.size() > Episodes.MOST) {
            queue.remove();
        }
    }

    private Burden burden(Episode episode) {
        return burden(1, episode.beats(), episode.duration());
    }

    private Burden sum(Burden a, Burden b) {
        return burden(a.episodes() + b.episodes(), a.beats() + b.beats(), a.time().plus(b.time()));
    }

    private Burden burden(long episodes, long beats, Duration time) {
        double percent = analysable.isZero() ? 0 : 100.0 * time.toNanos() / analysable.toNanos();
        return new Burden(episodes, beats, time, percent);
    }

    Episodes episodes() {
        var list = new ArrayList<Episode>();
        kept.values().forEach(list::addAll);
        list.sort(Comparator.comparing(Episode::start).thenComparing(Episode::kind));
        return new Episodes(List.copyOf(list), Collections.unmodifiableMap(burdens));
    }
}

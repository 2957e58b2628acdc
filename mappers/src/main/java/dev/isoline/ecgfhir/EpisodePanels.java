package dev.isoline.ecgfhir;

import static dev.isoline.ecgfhir.AmbulatoryEcgMetric.*;

import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.Episodes.Burden;
import dev.isoline.ecg.summary.HeartRates.Interval;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Threshold;
import dev.isoline.ecgfhir.EpisodeMetric.Aspect;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Observation;

/** Of each kind of episode a panel: how many there are, and how much of the time they take. */
final class EpisodePanels {

    private static final Absence NO_INTERVAL = Absence.unknown("No interval could be measured.");
    private static final Absence NOT_LOOKED_FOR = Absence.notPerformed("It was not looked for.");

    private final Summary summary;
    private final ObservationFrame frame;
    private final TimeAxis time;
    private final EpisodeObservations episodes;

    EpisodePanels(Summary summary, ObservationFrame frame, TimeAxis time) {
        this.summary = summary;
        this.frame = frame;
        this.time = time;
        this.episodes = new EpisodeObservations(summary.rhythm(), frame, time);
    }

    /** Each panel with its episodes after it; the pauses with the longest interval are the last. */
    List<Observation> all() {
        var all = new ArrayList<Observation>();
        for (var kind : EpisodeKind.values()) {
            if (kind != EpisodeKind.PAUSE) {
                add(kind, panel(kind), all);
            }
        }
        add(EpisodeKind.PAUSE, pauses(), all);
        return all;
    }

    private void add(EpisodeKind kind, Observation panel, List<Observation> all) {
        List<Observation> listed = episodes.of(kind);
        episodes.list(kind, listed, panel);
        all.add(panel);
        all.addAll(listed);
    }

    private Observation panel(EpisodeKind kind) {
        Panel panel = frame.panel(new EpisodeMetric(kind, Aspect.PANEL));
        if (!summary.rhythm().burdens().containsKey(kind)) {
            boolean unclassified = summary.beats().classified().isEmpty();
            Absence absence = unclassified ? Absence.UNCLASSIFIED : NOT_LOOKED_FOR;
            return panel.without(new EpisodeMetric(kind, Aspect.EPISODES), absence).observation();
        }
        Burden burden = summary.rhythm().burden(kind);
        panel.with(new EpisodeMetric(kind, Aspect.EPISODES), burden.episodes(), 0);
        return extent(kind, burden, panel).observation();
    }

    /** Without an episode there is no more to tell than the share of the time: none. */
    private static Panel extent(EpisodeKind kind, Burden burden, Panel panel) {
        if (burden.episodes() > 0) {
            panel.with(new EpisodeMetric(kind, Aspect.BEATS), burden.beats(), 0)
                    .with(new EpisodeMetric(kind, Aspect.TIME), Units.seconds(burden.time()), 1);
        }
        return panel.with(new EpisodeMetric(kind, Aspect.BURDEN), burden.percent(), 2);
    }

    private Observation pauses() {
        Burden burden = summary.rhythm().burden(EpisodeKind.PAUSE);
        Optional<Interval> longest = summary.rates().longestRr();
        double shortest = Units.millis(summary.settings().duration(Threshold.PAUSE));
        Panel panel =
                frame.panel(PAUSE_PANEL)
                        .with(PAUSE_COUNT, burden.episodes(), 0)
                        .with(PAUSE_THRESHOLD, shortest, 0)
                        .with(
                                LONGEST_RR,
                                longest.map(i -> Units.millis(i.length())),
                                0,
                                NO_INTERVAL)
                        .at(LONGEST_RR_TIME, longest.flatMap(i -> time.at(i.at())));
        return extent(EpisodeKind.PAUSE, burden, panel).observation();
    }
}

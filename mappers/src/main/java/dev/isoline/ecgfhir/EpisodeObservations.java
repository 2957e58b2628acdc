package dev.isoline.ecgfhir;

import static dev.isoline.ecgfhir.AmbulatoryEcgMetric.*;

import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.Episode.Rates;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.Episodes;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Observation;

/** Single episodes: when, how long, how many beats, how fast. */
final class EpisodeObservations {

    /** More of one kind than a reader goes through one by one; all are counted. */
    static final int MOST = 50;

    private static final Absence NO_RATE = Absence.unknown("No rate could be measured.");

    private final Episodes episodes;
    private final ObservationFrame frame;
    private final TimeAxis time;

    EpisodeObservations(Episodes episodes, ObservationFrame frame, TimeAxis time) {
        this.episodes = episodes;
        this.frame = frame;
        this.time = time;
    }

    /** The fastest and the longest, in order of time. */
    List<Observation> of(EpisodeKind kind) {
        return episodes.foremost(kind, MOST).stream()
                .map(e -> kind == EpisodeKind.PAUSE ? pause(e) : episode(e))
                .toList();
    }

    /** Refers to those listed, and says how many are not. */
    void list(EpisodeKind kind, List<Observation> listed, Observation panel) {
        listed.forEach(episode -> panel.addHasMember(ReportIds.to(episode)));
        long more = episodes.burden(kind).episodes() - listed.size();
        if (more > 0) {
            panel.addNote().setText(leftOut(listed.size(), more));
        }
    }

    private static String leftOut(int listed, long more) {
        return String.format(
                "Only %d episodes are listed, the fastest and the longest; %d more are counted.",
                listed, more);
    }

    /** One interval: its length says all. */
    private Observation pause(Episode pause) {
        Observation observation = event(PAUSE, pause);
        observation.setValue(Panel.quantity(PAUSE, Units.millis(pause.duration()), 0));
        return observation;
    }

    private Observation episode(Episode episode) {
        Observation observation = event(EPISODE, episode);
        observation.setValue(EpisodeConcept.of(episode.kind()));
        Optional<Rates> rates = episode.rates();
        return new Panel(observation)
                .with(EPISODE_DURATION, Units.seconds(episode.duration()), 2)
                .with(EPISODE_BEATS, episode.beats(), 0)
                .with(EPISODE_RATE_MEAN, rates.map(Rates::mean), 0, NO_RATE)
                .with(EPISODE_RATE_MIN, rates.map(Rates::min), 0, NO_RATE)
                .with(EPISODE_RATE_MAX, rates.map(Rates::max), 0, NO_RATE)
                .observation();
    }

    private Observation event(Metric metric, Episode episode) {
        var period = time.period(episode.start(), episode.end());
        String kind = EpisodeConcept.code(episode.kind());
        Observation observation = frame.event(metric, kind, episode.start(), period);
        if (period.isEmpty()) {
            String offset = episode.start().toSeconds() + " s after the start of the recording.";
            observation.addNote().setText(offset);
        }
        return observation;
    }
}

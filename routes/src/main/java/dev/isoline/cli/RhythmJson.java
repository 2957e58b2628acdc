package dev.isoline.cli;

import dev.isoline.ecg.summary.Ectopy;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.Episodes;
import dev.isoline.ecg.summary.Episodes.Burden;
import java.io.IOException;
import java.util.Locale;
import java.util.Map.Entry;

/** Ectopy and episodes as JSON. */
final class RhythmJson {

    private final JsonFields json;

    RhythmJson(JsonFields json) {
        this.json = json;
    }

    static String name(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    void ectopy(Ectopy ectopy) throws IOException {
        json.count("beats", ectopy.beats());
        json.number("percent", ectopy.percent());
        json.number("perHour", ectopy.perHour());
        json.object("mostInHour", ectopy.most(), this::most);
        json.count("couplets", ectopy.couplets());
        json.count("triplets", ectopy.triplets());
        json.count("runs", ectopy.runs());
        json.count("runBeats", ectopy.runBeats());
        json.object("longestRun", ectopy.longestRun(), this::episode);
        json.object("fastestRun", ectopy.fastestRun(), this::episode);
        json.object("bigeminy", ectopy.bigeminy(), this::pattern);
        json.object("trigeminy", ectopy.trigeminy(), this::pattern);
    }

    private void most(Ectopy.MostInHour most) throws IOException {
        json.seconds("fromSeconds", most.from());
        json.count("beats", most.beats());
    }

    private void pattern(Ectopy.Pattern pattern) throws IOException {
        json.count("episodes", pattern.episodes());
        json.count("ectopic", pattern.ectopic());
    }

    /** Pauses as intervals, as they stand beside the longest RR; then every kind alike. */
    void rhythm(Episodes episodes) throws IOException {
        json.lines("pauses", episodes.of(EpisodeKind.PAUSE), this::pause);
        json.lines("rhythm", episodes.burdens().entrySet(), this::burden);
        json.lines("episodes", episodes.list(), this::episode);
    }

    private void pause(Episode pause) throws IOException {
        json.seconds("atSeconds", pause.start());
        json.seconds("seconds", pause.duration());
    }

    private void burden(Entry<EpisodeKind, Burden> of) throws IOException {
        json.text("kind", name(of.getKey()));
        json.count("episodes", of.getValue().episodes());
        json.count("beats", of.getValue().beats());
        json.seconds("seconds", of.getValue().time());
        json.number("percent", of.getValue().percent());
    }

    private void episode(Episode episode) throws IOException {
        json.text("kind", name(episode.kind()));
        json.seconds("atSeconds", episode.start());
        json.seconds("seconds", episode.duration());
        json.count("beats", episode.beats());
        json.object("heartRate", episode.rates(), this::rates);
    }

    private void rates(Episode.Rates rates) throws IOException {
        json.number("mean", rates.mean());
        json.number("min", rates.min());
        json.number("max", rates.max());
    }
}

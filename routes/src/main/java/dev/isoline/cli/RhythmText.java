package dev.isoline.cli;

import static dev.isoline.cli.TextLines.format;
import static dev.isoline.cli.TextLines.plain;
import static dev.isoline.cli.TextLines.time;

import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.Episodes;
import dev.isoline.ecg.summary.Episodes.Burden;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Threshold;
import java.time.Duration;
import java.util.List;
import java.util.Locale;

/** Episodes for a person to read: of each kind a line, and the foremost of them. */
final class RhythmText {

    /** More than a screen of one kind hides the other kinds; JSON has all. */
    private static final int MOST = 10;

    private final TextLines text;

    RhythmText(TextLines text) {
        this.text = text;
    }

    static String name(EpisodeKind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    static String rates(Episode.Rates rates) {
        return format(", %.0f (%.0f to %.0f) /min", rates.mean(), rates.min(), rates.max());
    }

    void rhythm(Summary summary) {
        text.heading("Rhythm");
        Episodes episodes = summary.rhythm();
        episodes.burdens().forEach((kind, burden) -> kind(kind, burden, episodes));
        if (summary.beats().classified().isEmpty()) {
            text.row("Runs, couplets, patterns", "not looked for: nobody classified the beats.");
        }
        double pause = summary.settings().value(Threshold.PAUSE);
        text.row("A pause has", "%s s or more", plain(pause));
    }

    private void kind(EpisodeKind kind, Burden burden, Episodes episodes) {
        String words = name(kind);
        String name = words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
        text.line(format("  %-38s %s", name, burden.episodes() == 0 ? "none" : burden(burden)));
        List<Episode> foremost = episodes.foremost(kind, MOST);
        foremost.forEach(episode -> text.line(episode(episode)));
        if (foremost.size() < burden.episodes()) {
            text.line(format("      and %d more", burden.episodes() - foremost.size()));
        }
    }

    private static String burden(Burden burden) {
        return format(
                "%d, %d beats, %s, %.2f %% of the analysable time",
                burden.episodes(), burden.beats(), length(burden.time()), burden.percent());
    }

    private static String episode(Episode episode) {
        return format(
                "      %s  %s, %d beats%s",
                time(episode.start()),
                length(episode.duration()),
                episode.beats(),
                episode.rates().map(RhythmText::rates).orElse(""));
    }

    private static String length(Duration duration) {
        return duration.compareTo(Duration.ofMinutes(1)) < 0
                ? format("%.2f s", TextLines.seconds(duration))
                : time(duration);
    }
}

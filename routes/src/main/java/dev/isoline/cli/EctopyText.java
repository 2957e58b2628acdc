package dev.isoline.cli;

import static dev.isoline.cli.TextLines.format;
import static dev.isoline.cli.TextLines.time;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.BeatCounts;
import dev.isoline.ecg.summary.Ectopy;
import dev.isoline.ecg.summary.Episode;
import java.util.Map;
import java.util.Optional;

/** Beats by class and ectopy, for a person to read. */
final class EctopyText {

    private static final Map<Beat.Kind, String> CLASSES =
            Map.of(
                    Beat.Kind.N, "Normal (N)",
                    Beat.Kind.S, "Supraventricular (S)",
                    Beat.Kind.V, "Ventricular (V)",
                    Beat.Kind.F, "Fusion (F)",
                    Beat.Kind.Q, "Paced, unclassifiable (Q)",
                    Beat.Kind.UNCLASSIFIED, "Not classified");

    private final TextLines text;

    EctopyText(TextLines text) {
        this.text = text;
    }

    void beats(BeatCounts beats) {
        text.heading("Beats");
        text.row("All", "%d", beats.total());
        if (beats.classified().isEmpty()) {
            text.row("By class", "not measured: nobody classified the beats.");
        }
        beats.classified().forEach((kind, count) -> text.row(CLASSES.get(kind), "%d", count));
        beats.ventricular().ifPresent(ectopy -> ectopy("Ventricular ectopy", ectopy));
        beats.supraventricular().ifPresent(ectopy -> ectopy("Supraventricular ectopy", ectopy));
    }

    private void ectopy(String heading, Ectopy ectopy) {
        text.heading(heading);
        text.row("Beats", "%d (%.2f %% of all)", ectopy.beats(), ectopy.percent());
        text.row("Per analysable hour", number(ectopy.perHour()));
        text.row("Most in an hour", ectopy.most().map(EctopyText::most).orElse("none"));
        text.row("Couplets", "%d", ectopy.couplets());
        text.row("Triplets", "%d", ectopy.triplets());
        text.row("Runs", "%d with %d beats", ectopy.runs(), ectopy.runBeats());
        ectopy.longestRun().ifPresent(run -> text.row("Longest run", run(run)));
        ectopy.fastestRun().ifPresent(run -> text.row("Fastest run", run(run)));
        pattern("Bigeminy", ectopy.bigeminy());
        pattern("Trigeminy", ectopy.trigeminy());
    }

    private void pattern(String name, Ectopy.Pattern pattern) {
        text.row(name, "%d episodes with %d ectopic beats", pattern.episodes(), pattern.ectopic());
    }

    private static String number(Optional<Double> value) {
        return value.map(v -> format("%.1f", v)).orElse("not measurable");
    }

    private static String most(Ectopy.MostInHour most) {
        return format("%d from %s on", most.beats(), time(most.from()));
    }

    private static String run(Episode run) {
        return format(
                "%d beats in %.1f s%s at %s, %s",
                run.beats(),
                TextLines.seconds(run.duration()),
                run.rates().map(RhythmText::rates).orElse(""),
                time(run.start()),
                RhythmText.name(run.kind()));
    }
}

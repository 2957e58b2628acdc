package dev.isoline.ecgfhir;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.HeartRates;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Threshold;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The report in sentences; the first says what it is worth. */
final class Conclusion {

    private static final String CAUTION =
            "Computed by a program (Isoline %s); preliminary, not confirmed by a clinician."
                    + " It is no diagnosis: reading the recording and deciding on care belong to"
                    + " licensed clinicians under the rules in force where they practise.";

    private Conclusion() {}

    static String of(Summary summary, String software) {
        List<String> sentences = new ArrayList<>();
        sentences.add(String.format(Locale.ROOT, CAUTION, software));
        sentences.add(
                String.format(
                        Locale.ROOT,
                        "Recorded %s, of which %s analysable; %d beats.",
                        hoursAndMinutes(summary.coverage().recorded()),
                        hoursAndMinutes(summary.coverage().analysable()),
                        summary.beats().total()));
        summary.rates().whole().ifPresent(rate -> sentences.add(rate(rate)));
        sentences.add(ectopy(summary));
        sentences.add(pauses(summary));
        return String.join(" ", sentences);
    }

    private static String rate(HeartRates.Rate rate) {
        return String.format(
                Locale.ROOT,
                "Heart rate mean %d, minimum %d, maximum %d per minute.",
                Math.round(rate.mean()),
                Math.round(rate.min()),
                Math.round(rate.max()));
    }

    private static String ectopy(Summary summary) {
        if (summary.beats().classified().isEmpty()) {
            return "Ectopic beats were not looked for.";
        }
        return String.format(
                Locale.ROOT,
                "Ectopic beats: %d ventricular, %d supraventricular.",
                summary.beats().classified().getOrDefault(Beat.Kind.V, 0L),
                summary.beats().classified().getOrDefault(Beat.Kind.S, 0L));
    }

    private static String pauses(Summary summary) {
        double threshold = summary.settings().value(Threshold.PAUSE);
        long pauses = summary.rhythm().burden(EpisodeKind.PAUSE).episodes();
        return pauses == 0
                ? String.format(Locale.ROOT, "No pause of %.1f s or more.", threshold)
                : String.format(Locale.ROOT, "Pauses of %.1f s or more: %d.", threshold, pauses);
    }

    private static String hoursAndMinutes(Duration duration) {
        return String.format(
                Locale.ROOT, "%d h %02d min", duration.toHours(), duration.toMinutesPart());
    }
}

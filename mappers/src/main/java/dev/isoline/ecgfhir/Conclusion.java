package dev.isoline.ecgfhir;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.Episodes.Burden;
import dev.isoline.ecg.summary.HeartRates;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Threshold;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The report in sentences; the first says what it is worth. */
final class Conclusion {

    private static final String CAUTION =
            "Computed by a program (Isoline %s); preliminary, not confirmed by a clinician."
                    + " It is no diagnosis: reading the recording and deciding on care belong to"
                    + " licensed clinicians under the rules in force where they practise.";

    /** What a conclusion speaks of, whether there is any or not, in this order. */
    private static final Map<EpisodeKind, String> EPISODES =
            new EnumMap<>(
                    Map.of(
                            EpisodeKind.ATRIAL_FIBRILLATION,
                            "atrial fibrillation",
                            EpisodeKind.SUSTAINED_VENTRICULAR_TACHYCARDIA,
                            "sustained ventricular tachycardia",
                            EpisodeKind.NONSUSTAINED_VENTRICULAR_TACHYCARDIA,
                            "nonsustained ventricular tachycardia",
                            EpisodeKind.SUPRAVENTRICULAR_TACHYCARDIA,
                            "supraventricular tachycardia",
                            EpisodeKind.BRADYCARDIA,
                            "bradycardia",
                            EpisodeKind.TACHYCARDIA,
                            "tachycardia"));

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
        EPISODES.keySet().forEach(kind -> episodes(kind, summary).ifPresent(sentences::add));
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

    /** Only of kinds that were looked for. */
    private static Optional<String> episodes(EpisodeKind kind, Summary summary) {
        if (!summary.rhythm().burdens().containsKey(kind)) {
            return Optional.empty();
        }
        Burden burden = summary.rhythm().burden(kind);
        String words = EPISODES.get(kind);
        return Optional.of(
                burden.episodes() == 0
                        ? "No " + words + "."
                        : String.format(
                                Locale.ROOT,
                                "Episodes of %s: %d, %.1f %% of the analysable time.",
                                words,
                                burden.episodes(),
                                burden.percent()));
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

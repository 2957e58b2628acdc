package dev.isoline.cli;

import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.HeartRates;
import dev.isoline.ecg.summary.Measure;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Threshold;
import dev.isoline.ecg.summary.Variability;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.stream.Collectors;

/** A summary for a person to read. */
final class SummaryText {

    static final String PRELIMINARY =
            "Computed by a program; preliminary until confirmed by a clinician.";

    private static final DateTimeFormatter START =
            DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT);

    private final StringBuilder text = new StringBuilder();

    private SummaryText() {}

    static String of(Summary summary) {
        var text = new SummaryText();
        text.line(PRELIMINARY).line("");
        text.recording(summary);
        text.rates(summary);
        text.intervals(summary);
        text.variability(summary);
        summary.notes().forEach(note -> text.line("Note: " + note));
        return text.text.toString();
    }

    private void recording(Summary s) {
        row("Start", s.coverage().start().map(SummaryText::start).orElse("not given"));
        row(
                "Recorded",
                "%s, analysable %s",
                time(s.coverage().recorded()),
                time(s.coverage().analysable()));
        row("Sampling frequency", "%s Hz", plain(s.coverage().hz()));
        row(
                "Leads used",
                s.coverage().detectionLeads().isEmpty()
                        ? "none"
                        : String.join(", ", s.coverage().detectionLeads()));
        row("Beats", "%d", s.beats().total());
        if (!s.beats().classified().isEmpty()) {
            row(
                    "Beats by class",
                    s.beats().classified().entrySet().stream()
                            .map(entry -> entry.getKey() + " " + entry.getValue())
                            .collect(Collectors.joining(", ")));
        }
    }

    private void rates(Summary s) {
        row("Heart rate", s.rates().whole().map(SummaryText::rate).orElse("not measurable"));
        for (var hour : s.rates().hours()) {
            row(
                    "  from " + time(hour.from()),
                    "%d beats, %s",
                    hour.beats(),
                    hour.rate().map(SummaryText::shortRate).orElse("not measurable"));
        }
    }

    private void intervals(Summary s) {
        row(
                "Longest RR",
                s.rates().longestRr().map(SummaryText::interval).orElse("not measurable"));
        row(
                "Pauses",
                "%d of %s s or more",
                s.rhythm().burden(EpisodeKind.PAUSE).episodes(),
                plain(s.settings().value(Threshold.PAUSE)));
        s.rhythm().of(EpisodeKind.PAUSE).forEach(pause -> row("", pause(pause)));
    }

    private void variability(Summary s) {
        row("Heart rate variability", variability(s.variability()));
    }

    private static String variability(Variability v) {
        return format(
                "SDNN %s ms, RMSSD %s ms, pNN50 %s %% (%d NN intervals)",
                measured(v.sdnn()), measured(v.rmssd()), measured(v.pnn50()), v.intervals());
    }

    private static String measured(Measure measure) {
        return measure.value().map(value -> format("%.1f", value)).orElse("-");
    }

    private static String rate(HeartRates.Rate rate) {
        return format(
                "mean %.0f /min, lowest %.0f /min at %s, highest %.0f /min at %s",
                rate.mean(), rate.min(), time(rate.minAt()), rate.max(), time(rate.maxAt()));
    }

    private static String shortRate(HeartRates.Rate rate) {
        return format("%.0f (%.0f to %.0f) /min", rate.mean(), rate.min(), rate.max());
    }

    private static String pause(Episode pause) {
        return interval(new HeartRates.Interval(pause.start(), pause.duration()));
    }

    private static String interval(HeartRates.Interval interval) {
        return format("%.3f s at %s", interval.length().toNanos() / 1e9, time(interval.at()));
    }

    private static String start(LocalDateTime start) {
        return START.format(start) + " (local time of the patient)";
    }

    /** Hours beyond a day run on: an offset, not a time of day. */
    private static String time(Duration d) {
        return format("%02d:%02d:%02d", d.toHours(), d.toMinutesPart(), d.toSecondsPart());
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? format("%.0f", number) : format("%s", number);
    }

    private void row(String name, String format, Object... values) {
        line(format("%-24s %s", name, values.length == 0 ? format : format(format, values)));
    }

    private SummaryText line(String line) {
        text.append(line).append(System.lineSeparator());
        return this;
    }

    private static String format(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}

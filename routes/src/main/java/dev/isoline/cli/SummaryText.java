package dev.isoline.cli;

import static dev.isoline.cli.TextLines.format;
import static dev.isoline.cli.TextLines.plain;
import static dev.isoline.cli.TextLines.time;

import dev.isoline.ecg.summary.Coverage;
import dev.isoline.ecg.summary.HeartRates;
import dev.isoline.ecg.summary.HeartRates.Hour;
import dev.isoline.ecg.summary.Measure;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Variability;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** A summary for a person to read; times are offsets from the start. */
final class SummaryText {

    static final String PRELIMINARY =
            "Computed by a program; preliminary until confirmed by a clinician.";

    private static final DateTimeFormatter START =
            DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT);

    private final TextLines text = new TextLines();

    private SummaryText() {}

    static String of(Summary summary) {
        var report = new SummaryText();
        report.text.line(PRELIMINARY);
        report.recording(summary.coverage());
        report.rates(summary.rates());
        report.hours(summary);
        new EctopyText(report.text).beats(summary.beats());
        new RhythmText(report.text).rhythm(summary);
        report.variability(summary.variability());
        new QualityText(report.text).leads(summary.coverage().leads());
        new QualityText(report.text).thresholds(summary.settings());
        report.notes(summary);
        return report.text.toString();
    }

    private void recording(Coverage coverage) {
        text.heading("Recording");
        text.row("Start", coverage.start().map(SummaryText::start).orElse("not given"));
        text.row("Recorded", time(coverage.recorded()));
        text.row(
                "Analysable",
                "%s (%.1f %%)",
                time(coverage.analysable()),
                coverage.analysablePercent());
        text.row("Sampling frequency", "%s Hz", plain(coverage.hz()));
        var leads = coverage.detectionLeads();
        text.row("Leads used", leads.isEmpty() ? "none" : String.join(", ", leads));
    }

    private static String start(LocalDateTime start) {
        return START.format(start) + " (local time of the patient)";
    }

    private void rates(HeartRates rates) {
        text.heading("Heart rate, per minute");
        rates.whole().ifPresentOrElse(this::whole, () -> text.row("Mean", "not measurable"));
        text.row(
                "Longest RR",
                rates.longestRr().map(SummaryText::interval).orElse("not measurable"));
    }

    private void hours(Summary summary) {
        boolean classified = !summary.beats().classified().isEmpty();
        text.line("");
        text.line("  from      analysable    beats      V      S   mean  lowest  highest");
        summary.rates().hours().forEach(hour -> text.line(hour(hour, classified)));
    }

    private void whole(HeartRates.Rate rate) {
        text.row("Mean", "%.0f", rate.mean());
        text.row("Lowest", "%.0f at %s", rate.min(), time(rate.minAt()));
        text.row("Highest", "%.0f at %s", rate.max(), time(rate.maxAt()));
    }

    private static String interval(HeartRates.Interval interval) {
        return format("%.3f s at %s", TextLines.seconds(interval.length()), time(interval.at()));
    }

    private static String hour(Hour hour, boolean classified) {
        String counts =
                format(
                        "  %s  %s  %9d %6s %6s",
                        time(hour.from()),
                        time(hour.analysable()),
                        hour.beats(),
                        classified ? hour.ventricular() : "-",
                        classified ? hour.supraventricular() : "-");
        return counts + hour.rate().map(SummaryText::columns).orElse("      -       -        -");
    }

    private static String columns(HeartRates.Rate rate) {
        return format(" %6.0f %7.0f %8.0f", rate.mean(), rate.min(), rate.max());
    }

    private void variability(Variability v) {
        text.heading("Heart rate variability");
        text.row("NN intervals", "%d, together %s", v.intervals(), time(v.analysed()));
        measure("SDNN", v.sdnn(), " ms");
        measure("SDANN", v.sdann(), " ms");
        measure("SDNN index", v.sdnnIndex(), " ms");
        measure("RMSSD", v.rmssd(), " ms");
        measure("pNN50", v.pnn50(), " %");
        measure("Triangular index", v.triangularIndex(), "");
    }

    private void measure(String name, Measure measure, String unit) {
        String refused = "not measured: " + measure.refusal().orElse("no reason given.");
        text.row(name, measure.value().map(v -> format("%.1f", v) + unit).orElse(refused));
    }

    private void notes(Summary summary) {
        if (!summary.notes().isEmpty()) {
            text.heading("Notes");
            summary.notes().forEach(note -> text.line("  " + note));
        }
    }
}

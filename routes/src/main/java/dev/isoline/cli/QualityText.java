package dev.isoline.cli;

import static dev.isoline.cli.TextLines.format;
import static dev.isoline.cli.TextLines.plain;
import static dev.isoline.cli.TextLines.time;

import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.LeadReport;
import java.util.List;
import java.util.stream.Collectors;

/** Quality of each lead, and the thresholds of the analysis, for a person to read. */
final class QualityText {

    private final TextLines text;

    QualityText(TextLines text) {
        this.text = text;
    }

    void leads(List<LeadReport> leads) {
        if (!leads.isEmpty()) {
            text.heading("Leads");
            leads.forEach(this::lead);
        }
    }

    private void lead(LeadReport lead) {
        text.row(
                lead.label(),
                "usable %s of %s (%.1f %%), %s",
                time(lead.usable()),
                time(lead.recorded()),
                100 * lead.usableShare(),
                lead.amplitude().map(a -> format("QRS %.0f uV", a)).orElse("QRS not measurable"));
        lead.disturbed().entrySet().stream()
                .filter(disturbed -> !disturbed.getValue().isZero())
                .map(d -> RhythmJson.name(d.getKey()) + " " + time(d.getValue()))
                .forEach(words -> text.row("", words));
    }

    /** Those that differ from the default, which docs/analysis.md has. */
    void thresholds(AnalysisSettings settings) {
        String changed =
                settings.values().entrySet().stream()
                        .filter(set -> set.getValue() != set.getKey().standard())
                        .map(set -> set.getKey().key() + " " + plain(set.getValue()))
                        .collect(Collectors.joining(", "));
        if (!changed.isEmpty()) {
            text.heading("Thresholds that are not the default: " + changed);
        }
    }
}

package dev.isoline.ecgfhir;

import static dev.isoline.ecgfhir.AmbulatoryEcgMetric.*;

import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Coverage;
import dev.isoline.ecg.summary.Disturbance;
import dev.isoline.ecg.summary.LeadReport;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Threshold;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.StringType;

/** How much was recorded and could be measured: of the recording, then of each lead. */
final class QualityPanels {

    private static final Map<Disturbance, Metric> DISTURBED =
            Map.of(
                    Disturbance.LEAD_OFF, LEAD_OFF,
                    Disturbance.SATURATED, LEAD_SATURATED,
                    Disturbance.MAINS, LEAD_MAINS,
                    Disturbance.MUSCLE, LEAD_MUSCLE,
                    Disturbance.WANDER, LEAD_WANDER,
                    Disturbance.BURIED, LEAD_BURIED);

    private QualityPanels() {}

    static List<Observation> of(Summary summary, ObservationFrame frame) {
        var leads = new ArrayList<Observation>();
        for (var lead : summary.coverage().leads()) {
            leads.add(lead(lead, frame.panel(LEAD_PANEL, leads.size() + 1)));
        }
        Observation whole = whole(summary, frame.panel(QUALITY_PANEL));
        leads.forEach(lead -> whole.addHasMember(ReportIds.to(lead)));
        leads.add(0, whole);
        return leads;
    }

    private static Observation whole(Summary summary, Panel panel) {
        Coverage coverage = summary.coverage();
        panel.with(RECORDED_TIME, Units.hours(coverage.recorded()), 2)
                .with(ANALYSABLE_TIME, Units.hours(coverage.analysable()), 2)
                .with(
                        ANALYSABLE_SHARE,
                        share(coverage.analysablePercent(), coverage.recorded()),
                        1,
                        Absence.unknown("Nothing was recorded."))
                .with(SAMPLING_FREQUENCY, coverage.hz(), 3);
        if (!coverage.detectionLeads().isEmpty()) {
            String leads = String.join(", ", coverage.detectionLeads());
            panel.with(DETECTION_LEADS, new StringType(leads));
        }
        panel.with(THRESHOLDS, new StringType(thresholds(summary.settings())));
        summary.notes().forEach(note -> panel.observation().addNote().setText(note));
        return panel.observation();
    }

    private static Optional<Double> share(double percent, Duration recorded) {
        return recorded.isZero() ? Optional.empty() : Optional.of(percent);
    }

    /** By the names docs/analysis.md has, in the units named there. */
    private static String thresholds(AnalysisSettings settings) {
        return Arrays.stream(Threshold.values())
                .map(threshold -> threshold.key() + " " + plain(settings.value(threshold)))
                .collect(Collectors.joining(", "));
    }

    private static String plain(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }

    private static Observation lead(LeadReport lead, Panel panel) {
        panel.with(LEAD, new StringType(lead.label()))
                .with(LEAD_RECORDED, Units.minutes(lead.recorded()), 1)
                .with(LEAD_USABLE, Units.minutes(lead.usable()), 1)
                .with(
                        LEAD_USABLE_SHARE,
                        share(100 * lead.usableShare(), lead.recorded()),
                        1,
                        Absence.unknown("Nothing was recorded of this lead."))
                .with(
                        LEAD_AMPLITUDE,
                        lead.amplitude(),
                        0,
                        Absence.unknown("The lead is not calibrated or shows no QRS complexes."));
        for (var kind : Disturbance.values()) {
            var time = lead.disturbed().getOrDefault(kind, Duration.ZERO);
            panel.with(DISTURBED.get(kind), Units.minutes(time), 1);
        }
        return panel.observation();
    }
}

package dev.isoline.ecgfhir;

import static dev.isoline.ecgfhir.AmbulatoryEcgMetric.*;

import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Variability;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.r4.model.Observation;

/**
 * What the analysis found, as FHIR R4 Observations: one per topic, and one per episode. Rows and
 * their reasons: docs/mappings/summary-to-observations.md.
 */
public final class SummaryToObservations {

    private SummaryToObservations() {}

    /**
     * Panels in a fixed order, the episodes of a kind after its panel in time order.
     *
     * @param span from the first to the last sample, gaps included
     */
    public static List<Observation> map(Summary summary, ReportContext context, Duration span) {
        var time = new TimeAxis(summary.coverage().start(), context.zone());
        var frame = new ObservationFrame(context, time.period(Duration.ZERO, span));
        var all = new ArrayList<Observation>();
        all.addAll(QualityPanels.of(summary, frame));
        all.addAll(RatePanels.of(summary, frame, time));
        all.add(BeatPanel.of(summary.beats(), frame));
        all.add(EctopyPanel.ventricular(summary.beats(), frame, time));
        all.add(EctopyPanel.supraventricular(summary.beats(), frame, time));
        all.addAll(new EpisodePanels(summary, frame, time).all());
        all.add(variability(summary.variability(), frame.panel(HRV_PANEL)));
        return all;
    }

    private static Observation variability(Variability measured, Panel panel) {
        return panel.with(SDNN, measured.sdnn(), 1)
                .with(SDANN, measured.sdann(), 1)
                .with(SDNN_INDEX, measured.sdnnIndex(), 1)
                .with(RMSSD, measured.rmssd(), 1)
                .with(PNN50, measured.pnn50(), 1)
                .with(TRIANGULAR_INDEX, measured.triangularIndex(), 1)
                .with(NN_INTERVALS, measured.intervals(), 0)
                .with(NN_TIME, Units.hours(measured.analysed()), 2)
                .observation();
    }
}

package dev.isoline.ecgfhir;

import dev.isoline.ecg.summary.HeartRates;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.fhir.TransactionBundle;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DiagnosticReport;
import org.hl7.fhir.r4.model.ImagingStudy;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Resource;

/**
 * The preliminary report of one recording as a FHIR R4 transaction. Its own resources are replaced
 * at the receiver when they are there already; patient, order and clinician are the receiver's and
 * are only created where it does not know them.
 */
public final class ReportBundle {

    private ReportBundle() {}

    /**
     * @param summary what the analysis found
     * @param objects the DICOM objects made of the recording; without any there is no ImagingStudy
     */
    public static Bundle of(ReportContext context, Summary summary, List<WaveformObject> objects) {
        Duration span = span(context, summary, objects);
        Optional<Period> recorded =
                new TimeAxis(summary.coverage().start(), context.zone())
                        .period(Duration.ZERO, span);
        List<Observation> results = SummaryToObservations.map(summary, context, span);
        List<ImagingStudy> studies = ObjectsToImagingStudy.map(context, objects);
        DiagnosticReport report = SummaryToDiagnosticReport.map(summary, context, recorded);
        results.forEach(result -> report.addResult(ReportIds.to(result)));
        studies.forEach(study -> report.addImagingStudy(ReportIds.to(study)));

        var made = new ArrayList<Resource>(List.of(report));
        made.addAll(results);
        made.addAll(studies);
        made.add(RecordingToDocumentReference.map(context, recorded));
        return bundle(context, made);
    }

    private static Bundle bundle(ReportContext context, List<Resource> made) {
        var bundle = new TransactionBundle();
        made.forEach(bundle::update);
        bundle.create(ReportProvenance.of(context, made));
        bundle.create(Devices.software(context));
        if (!context.recording().equipment().isEmpty()) {
            bundle.create(Devices.recorder(context));
        }
        bundle.create(context.patient()).create(context.order());
        context.requester().forEach(bundle::create);
        return bundle.build();
    }

    /** From the first to the last sample, as far as summary and objects tell it. */
    private static Duration span(
            ReportContext context, Summary summary, List<WaveformObject> objects) {
        Stream<Duration> known =
                Stream.concat(
                        Stream.of(summary.coverage().recorded()),
                        summary.rates().hours().stream().map(HeartRates.Hour::from));
        Stream<Duration> ends =
                summary.coverage().start().stream()
                        .map(start -> start.atZone(context.zone()).toInstant())
                        .flatMap(start -> objects.stream().flatMap(o -> end(o, start, summary)));
        return Stream.concat(known, ends).max(Duration::compareTo).orElse(Duration.ZERO);
    }

    private static Stream<Duration> end(WaveformObject object, Instant start, Summary summary) {
        long nanos = Math.round(object.samples() * 1e9 / summary.coverage().hz());
        return object.start().stream().map(s -> Duration.between(start, s.plusNanos(nanos)));
    }
}

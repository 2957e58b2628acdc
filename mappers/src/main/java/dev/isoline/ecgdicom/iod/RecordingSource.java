package dev.isoline.ecgdicom.iod;

import dev.isoline.dicom.Tag;
import dev.isoline.dicom.Uid;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingHeader;
import dev.isoline.ecgdicom.ObjectSink;
import dev.isoline.ecgdicom.OrderContext;
import dev.isoline.ecgdicom.RecordingContext;
import dev.isoline.ecgdicom.module.CompositeObject.Series;
import dev.isoline.ecgdicom.module.WaveformObject.Signal;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A recording that can be made ECG objects of, and the series they are put into.
 *
 * @param contentId what UIDs are derived from
 * @param start of the recording
 * @param signal with all leads
 */
record RecordingSource(
        OrderContext order, String contentId, ZonedDateTime start, Signal signal, ObjectSink sink) {

    private static final int MOST_BITS = 16;

    /**
     * @throws ContentError when the recording cannot be an Ambulatory ECG
     */
    static RecordingSource of(
            Recording recording, OrderContext order, RecordingContext context, ObjectSink sink) {
        RecordingHeader header = recording.header();
        Optional<LocalDateTime> start = header.start().or(context::start);
        var problems = problems(header);
        if (start.isEmpty()) {
            problems.add(
                    problem(
                            Tag.AcquisitionDateTime,
                            "The recording does not say when it started."));
        }
        if (!problems.isEmpty()) {
            throw new ContentError(problems);
        }
        var signal =
                new Signal(
                        (int) header.hz(),
                        header.leads(),
                        recording.marksMissing(),
                        header.equipment());
        return new RecordingSource(
                order, context.contentId(), start.get().atZone(context.zone()), signal, sink);
    }

    /** The whole recording: one series for all of its objects. */
    SeriesWriter recording() {
        return series(EcgIod.AMBULATORY, "series", 1, "Recording", signal.leads());
    }

    /** Short parts of it. */
    SeriesWriter strips(EcgIod iod) {
        return series(iod, "strips", 2, "Strips", signal.leads());
    }

    /** Short parts of the twelve leads. */
    SeriesWriter twelveLeads(List<Lead> leads) {
        return series(EcgIod.TWELVE_LEAD, "12-lead", 3, "12-lead ECG", leads);
    }

    private SeriesWriter series(
            EcgIod iod, String kind, int number, String description, List<Lead> leads) {
        var series =
                new Series(
                        Uid.of(kind, order.studyUid(), contentId),
                        number,
                        description,
                        Optional.of(start.toOffsetDateTime()));
        var sampled = new Signal(signal.hz(), leads, signal.padded(), signal.equipment());
        return new SeriesWriter(iod, order, series, sampled, start, sink);
    }

    private static List<Problem> problems(RecordingHeader header) {
        var problems = new ArrayList<Problem>();
        IodLimits.rate(EcgIod.AMBULATORY, header.hz()).ifPresent(problems::add);
        IodLimits.channels(EcgIod.AMBULATORY, header.leads().size()).ifPresent(problems::add);
        for (Lead lead : header.leads()) {
            if (lead.bitsStored() > MOST_BITS) {
                problems.add(
                        problem(
                                Tag.WaveformBitsStored,
                                "A lead has samples of "
                                        + lead.bitsStored()
                                        + " bits; an Ambulatory ECG has at most 16."));
            }
        }
        return problems;
    }

    private static Problem problem(int tag, String text) {
        return Problem.error(Problem.Kind.VALUE, Tag.format(tag), text);
    }
}

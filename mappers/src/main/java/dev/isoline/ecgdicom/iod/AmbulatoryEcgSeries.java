package dev.isoline.ecgdicom.iod;

import dev.isoline.dicom.Tag;
import dev.isoline.dicom.Uid;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.RecordingHeader;
import dev.isoline.ecgdicom.OrderContext;
import dev.isoline.ecgdicom.RecordingContext;
import dev.isoline.ecgdicom.module.WaveformObject.Series;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The series of a recording, when the recording can be one of Ambulatory ECG objects at all. */
final class AmbulatoryEcgSeries {

    private static final int MOST_BITS = 16;

    private AmbulatoryEcgSeries() {}

    static Series of(RecordingHeader header, OrderContext order, RecordingContext context) {
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
        return new Series(
                Uid.of("series", order.studyUid(), context.contentId()),
                start.get().atZone(context.zone()),
                (int) header.hz(),
                header.leads(),
                header.equipment());
    }

    private static List<Problem> problems(RecordingHeader header) {
        var problems = new ArrayList<Problem>();
        AmbulatoryEcgLimits.rate(header.hz()).ifPresent(problems::add);
        AmbulatoryEcgLimits.channels(header.leads().size()).ifPresent(problems::add);
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

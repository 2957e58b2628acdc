package dev.isoline.ecgdicom.iod;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.Stretch;
import dev.isoline.ecg.analysis.Findings;
import dev.isoline.ecgdicom.ObjectSink;
import dev.isoline.ecgdicom.OrderContext;
import dev.isoline.ecgdicom.RecordingContext;
import dev.isoline.ecgdicom.StripSettings;
import dev.isoline.ecgdicom.WrittenObject;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A recording as DICOM objects, in one pass: an Ambulatory ECG for each gap-free block, of at most
 * 24 h; strips around what an analysis found; of a recording of the twelve leads that is short
 * enough, a 12-lead ECG.
 */
public final class RecordingToObjects {

    private RecordingToObjects() {}

    /**
     * Writes the objects of a recording nobody has analysed: no annotations, no strips.
     *
     * @return what was written, series by series in time order; empty when there is no sample
     * @throws dev.isoline.order.ContentError when the recording cannot be an Ambulatory ECG; the
     *     problems are located by tag
     * @throws IOException when the recording cannot be read or the sink not be written
     */
    public static List<WrittenObject> write(
            Recording recording, OrderContext order, RecordingContext context, ObjectSink sink)
            throws IOException {
        long samples = recording.header().samples();
        var source = RecordingSource.of(recording, order, context, sink);
        return write(
                recording,
                source,
                Annotator.of(recording.header()),
                whole(source, new Stretch(0, samples)));
    }

    /**
     * Writes the objects of a recording that was analysed, annotated with what was found.
     *
     * @param recording the same one again, from its beginning; it is read to its end and stays open
     * @param findings of this recording
     */
    public static List<WrittenObject> write(
            Recording recording,
            Findings findings,
            StripSettings strips,
            OrderContext order,
            RecordingContext context,
            ObjectSink sink)
            throws IOException {
        var source = RecordingSource.of(recording, order, context, sink);
        Optional<Stretch> block =
                findings.recorded().size() == 1
                        ? Optional.of(findings.recorded().get(0))
                        : Optional.empty();
        List<Strip> whole = block.map(all -> whole(source, all)).orElse(List.of());
        return write(
                recording,
                source,
                Annotator.of(findings),
                whole.isEmpty() ? StripPlan.of(findings, strips) : whole);
    }

    /** All of a recording of the twelve leads, when it is as short as a 12-lead ECG has to be. */
    private static List<Strip> whole(RecordingSource source, Stretch all) {
        boolean fits =
                all.length() > 0
                        && all.length() <= EcgIod.TWELVE_LEAD.mostSamples
                        && EcgIod.TWELVE_LEAD.takes(source.signal().hz())
                        && TwelveLeads.in(source.signal().leads()).isPresent();
        return fits ? List.of(new Strip(all, List.of())) : List.of();
    }

    private static List<WrittenObject> write(
            Recording recording, RecordingSource source, Annotator annotator, List<Strip> strips)
            throws IOException {
        var cut = StripSeries.of(source, annotator, strips);
        try (var objects = new ObjectSeries(source.recording(), annotator)) {
            for (Optional<Block> block = recording.next();
                    block.isPresent();
                    block = recording.next()) {
                objects.append(block.get());
                cut.append(block.get());
            }
            var written = new ArrayList<>(objects.finish());
            written.addAll(cut.finish());
            return written;
        }
    }
}

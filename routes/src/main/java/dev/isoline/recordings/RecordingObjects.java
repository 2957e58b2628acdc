package dev.isoline.recordings;

import dev.isoline.ecg.Recording;
import dev.isoline.ecg.analysis.Findings;
import dev.isoline.ecg.dicom.DicomRecording;
import dev.isoline.ecgdicom.OrderContext;
import dev.isoline.ecgdicom.RecordingContext;
import dev.isoline.ecgdicom.StripSettings;
import dev.isoline.ecgdicom.WrittenObject;
import dev.isoline.ecgdicom.iod.RecordingToObjects;
import dev.isoline.ecgfhir.WaveformObject;
import dev.isoline.ledger.RecordingTable.RecordingRow;
import java.io.IOException;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** The DICOM objects of one recording, as files of the data folder. */
final class RecordingObjects {

    /**
     * @param paths relative to the data folder, in the order of {@code waveforms}
     */
    record Written(List<WaveformObject> waveforms, List<String> paths) {}

    private final RecordingStore store;
    private final RecordingRow row;
    private final ZoneId zone;

    RecordingObjects(RecordingStore store, RecordingRow row, ZoneId zone) {
        this.store = store;
        this.row = row;
        this.zone = zone;
    }

    /** Reads the recording once more and writes what was found in it into its objects. */
    Written write(OrderContext order, Findings findings, StripSettings strips) throws IOException {
        String folder = "objects/" + row.orderId();
        var sink = new ObjectFolder(store.resolve(folder));
        try (Recording recording = store.open(row.path())) {
            if (recording instanceof DicomRecording received) {
                return received(received, sink, folder);
            }
            List<WrittenObject> written =
                    RecordingToObjects.write(
                            recording,
                            findings,
                            strips,
                            order,
                            new RecordingContext(row.sha256(), zone, Optional.of(arrival())),
                            sink);
            return new Written(
                    written.stream().map(RecordingObjects::waveform).toList(),
                    written.stream().map(o -> folder + "/" + o.sopInstanceUid() + ".dcm").toList());
        }
    }

    /**
     * A recording that came as a DICOM object is its own object: made again under other UIDs, an
     * archive would hold the same samples twice.
     */
    private Written received(DicomRecording recording, ObjectFolder sink, String folder)
            throws IOException {
        var uids = recording.uids();
        sink.link(store.resolve(row.path()), uids.sopInstance());
        var waveform =
                new WaveformObject(
                        uids.study(),
                        uids.series(),
                        uids.sopClass(),
                        uids.sopInstance(),
                        uids.number(),
                        recording.header().start().map(start -> start.atZone(zone).toInstant()),
                        recording.header().samples());
        return new Written(List.of(waveform), List.of(folder + "/" + uids.sopInstance() + ".dcm"));
    }

    /** Stands in for the start where the recording names none: type 1 in DICOM. */
    private LocalDateTime arrival() {
        return LocalDateTime.ofInstant(row.receivedAt(), zone);
    }

    private static WaveformObject waveform(WrittenObject object) {
        return new WaveformObject(
                object.studyInstanceUid(),
                object.seriesInstanceUid(),
                object.sopClassUid(),
                object.sopInstanceUid(),
                object.number(),
                Optional.of(object.start().toInstant()),
                object.samples());
    }
}

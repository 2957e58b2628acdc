package dev.isoline.recordings;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.spi.Status;
import dev.isoline.dicom.spi.StoreRequest;
import dev.isoline.intake.Source;
import dev.isoline.ledger.AuditTable.Event;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.LedgerBusyException;
import dev.isoline.recordings.RecordingReception.Received;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletionException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/**
 * Recordings that come as waveform objects by C-STORE (PS3.4 annex B). Success is answered when the
 * object is on disk and in the ledger; an object held for its identity is kept as it came, and that
 * is a success too. Comments say nothing of a patient.
 */
@Component
public class RecordingByDicom {

    /** 12-lead ECG, General ECG and Ambulatory ECG Waveform Storage, PS3.4 B.5. */
    public static final List<String> SOP_CLASSES =
            List.of(
                    "1.2.840.10008.5.1.4.1.1.9.1.1",
                    "1.2.840.10008.5.1.4.1.1.9.1.2",
                    "1.2.840.10008.5.1.4.1.1.9.1.3");

    private static final Status UNKNOWN_ORDER = Status.of(0xC010);
    private static final Status NOT_EXPECTED = Status.of(0xC011);
    private static final Status ANOTHER_OBJECT = Status.of(0xC012);

    private static final Logger LOG = LoggerFactory.getLogger(RecordingByDicom.class);

    private final RecordingReception reception;
    private final Ledger ledger;
    private final Clock clock;

    public RecordingByDicom(RecordingReception reception, Ledger ledger, Clock clock) {
        this.reception = reception;
        this.ledger = ledger;
        this.clock = clock;
    }

    /**
     * @param file the object as it came; it may be moved
     * @return what the station is told, docs/flows/03-recording-in.md
     */
    public Status store(StoreRequest request, Path file) {
        Status status = received(request, file);
        LOG.info(
                "Object {} of {}: {}",
                request.instance().sopInstance(),
                request.peer().calling(),
                status);
        return status;
    }

    private Status received(StoreRequest request, Path file) {
        var source = new Source("recording", station(request), 0, clock.instant());
        try (InputStream bytes = Files.newInputStream(file)) {
            if (!isAsAnnounced(request, file)) {
                return Status.DOES_NOT_MATCH_SOP_CLASS.because("another SOP class or instance");
            }
            Received received = reception.receive(bytes, "", source);
            audit(request, received);
            return Status.SUCCESS;
        } catch (RecordingRefused refused) {
            return answer(refused);
        } catch (DicomException e) {
            return Status.CANNOT_UNDERSTAND.because(e.getMessage());
        } catch (FileSystemException e) {
            return Status.OUT_OF_RESOURCES.because("the disk does not take it");
        } catch (IOException | LedgerBusyException | CompletionException e) {
            LOG.error("An object could not be kept: {}", e.getClass().getName());
            return Status.OUT_OF_RESOURCES.because("it cannot be kept now");
        }
    }

    /** What the request calls it and what the object calls itself, PS3.7 9.1.1.1. */
    private static boolean isAsAnnounced(StoreRequest request, Path file) throws IOException {
        try (var channel = FileChannel.open(file)) {
            DataSet object = Part10.read(channel, ReadLimits.DEFAULT).dataSet();
            return object.text(Tag.SOPClassUID).equals(Optional.of(request.instance().sopClass()))
                    && object.text(Tag.SOPInstanceUID)
                            .equals(Optional.of(request.instance().sopInstance()));
        }
    }

    /** PS3.4 B.2.3 leaves the last three digits of Cxxx to us. */
    private static Status answer(RecordingRefused refused) {
        Status status =
                switch (refused.reason()) {
                    case UNREADABLE -> Status.CANNOT_UNDERSTAND;
                    case UNKNOWN_ORDER -> UNKNOWN_ORDER;
                    case NOT_EXPECTED -> NOT_EXPECTED;
                    case ANOTHER_OBJECT -> ANOTHER_OBJECT;
                };
        return status.because(refused.getMessage());
    }

    private void audit(StoreRequest request, Received received) {
        var event =
                new Event(
                        clock.instant(),
                        station(request),
                        "dicom C-STORE",
                        "Recording/" + received.row().id(),
                        received.isNew() ? "stored" : "was there already");
        ledger.write(
                        tables -> {
                            tables.audit().add(event);
                            return null;
                        })
                .join();
    }

    private static String station(StoreRequest request) {
        return "dicom:" + request.peer().calling();
    }
}

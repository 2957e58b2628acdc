package dev.isoline.recordings;

import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingHeader;
import dev.isoline.ecg.dicom.DicomRecording;
import dev.isoline.intake.Source;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.RecordingTable.RecordingRow;
import dev.isoline.recordings.RecordingRefused.Reason;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import java.util.concurrent.CompletionException;
import org.springframework.stereotype.Component;

/** Takes a recording in: bytes to disk first, then its row and the order's next state at once. */
@Component
public class RecordingReception {

    /**
     * @param isNew false when the same bytes were taken before
     */
    public record Received(RecordingRow row, boolean isNew) {}

    /**
     * A recording that is on disk and was looked into.
     *
     * @param sopInstance UID of the DICOM object it came as; empty where it came as none
     */
    record Brought(RecordingStore.Kept kept, RecordingHeader header, String sopInstance) {}

    private final RecordingStore store;
    private final Ledger ledger;
    private final RecordingMatch match;

    public RecordingReception(RecordingStore store, Ledger ledger, RecordingMatch match) {
        this.store = store;
        this.ledger = ledger;
        this.match = match;
    }

    /**
     * @param number placer, filler or accession number; empty: the one the file carries
     * @throws RecordingRefused when it is not taken; its bytes are then not kept
     */
    public Received receive(InputStream bytes, String number, Source source) throws IOException {
        return receive(bytes, number, "", source);
    }

    /**
     * @param fallback the order's number when neither {@code number} nor the file tells one
     */
    Received receive(InputStream bytes, String number, String fallback, Source source)
            throws IOException {
        return take(store.stream(bytes), number, fallback, source);
    }

    /** One at a time: a refused file is removed, and others may be bringing the same bytes. */
    private synchronized Received take(
            RecordingStore.Incoming incoming, String number, String fallback, Source source)
            throws IOException {
        var kept = store.place(incoming);
        var before = ledger.read(tables -> tables.recordings().bySha256(kept.sha256()));
        if (before.isPresent()) {
            return new Received(before.get(), false);
        }
        try {
            var brought = read(kept);
            var same = sameObject(brought);
            if (same.isPresent()) {
                store.discard(kept);
                return new Received(same.get(), false);
            }
            return enter(brought, orderNumber(number, brought.header(), fallback), source);
        } catch (RecordingRefused refused) {
            store.discard(kept);
            throw refused;
        }
    }

    private Brought read(RecordingStore.Kept kept) throws IOException {
        try (var recording = store.open(kept.path())) {
            return new Brought(kept, recording.header(), sopInstance(recording));
        } catch (RecordingException e) {
            throw new RecordingRefused(Reason.UNREADABLE, e.getMessage());
        }
    }

    private static String sopInstance(Recording recording) {
        return recording instanceof DicomRecording object ? object.uids().sopInstance() : "";
    }

    /** A SOP Instance UID names one object for good (PS3.5 9.1): another one may not take it. */
    private Optional<RecordingRow> sameObject(Brought brought) throws IOException {
        if (brought.sopInstance().isEmpty()) {
            return Optional.empty();
        }
        var before = ledger.read(t -> t.recordings().bySopInstance(brought.sopInstance()));
        if (before.isPresent()
                && !ObjectContent.isSame(
                        store.resolve(before.get().path()), store.resolve(brought.kept().path()))) {
            throw new RecordingRefused(
                    Reason.ANOTHER_OBJECT, "Another object with this SOP Instance UID is here.");
        }
        return before;
    }

    private static String orderNumber(String number, RecordingHeader header, String fallback) {
        if (!number.isEmpty()) {
            return number;
        }
        String named = header.identity().orderNumber();
        return named.isEmpty() ? fallback : named;
    }

    private Received enter(Brought brought, String number, Source source) {
        try {
            return ledger.write(tables -> match.enter(tables, brought, number, source)).join();
        } catch (CompletionException e) {
            throw e.getCause() instanceof RecordingRefused refused ? refused : e;
        }
    }
}

package dev.isoline.ledger;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** {@code recording}: files received, their checksum, the order they belong to. */
public interface RecordingTable {

    /**
     * {@code RECEIVED} waits for analysis; {@code HELD} for a person; {@code FAILED} is unreadable.
     */
    enum State {
        RECEIVED,
        HELD,
        ANALYSED,
        FAILED
    }

    /**
     * @param id stable id derived from the checksum
     * @param sha256 of the bytes as received
     * @param path relative to the data folder
     * @param problem why it is held or failed; empty otherwise
     */
    record RecordingRow(
            String id,
            String sha256,
            String orderId,
            String path,
            String sender,
            State state,
            String problem,
            Instant receivedAt) {}

    void insert(RecordingRow row);

    void update(RecordingRow row);

    Optional<RecordingRow> byId(String id);

    Optional<RecordingRow> bySha256(String sha256);

    List<RecordingRow> byState(State state, int limit);
}

package dev.isoline.recordings;

import dev.isoline.ecg.Recording;
import dev.isoline.intake.Source;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.RecordingTable.RecordingRow;
import dev.isoline.ledger.RecordingTable.State;
import java.io.IOException;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.CompletionException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;

/**
 * Works through recordings that are in; what it has not finished it finds again after a restart.
 */
@Component
public class RecordingWorker {

    private static final Logger LOG = LoggerFactory.getLogger(RecordingWorker.class);
    private static final int BATCH = 16;
    private static final int HELD = 1_000;

    private final Ledger ledger;
    private final RecordingStore store;
    private final RecordingMatch match;
    private final ResultMaker results;
    private final Clock clock;

    public RecordingWorker(
            Ledger ledger,
            RecordingStore store,
            RecordingMatch match,
            ResultMaker results,
            Clock clock) {
        this.ledger = ledger;
        this.store = store;
        this.match = match;
        this.results = results;
        this.clock = clock;
    }

    /** Recordings whose turn it is, oldest first. */
    @Scheduled(fixedDelay = 500)
    public void analyse() {
        byState(State.RECEIVED, BATCH).forEach(this::analyse);
    }

    /** What is known of a patient may have changed since a recording was held. */
    @Scheduled(fixedDelay = 5_000)
    public void review() {
        byState(State.HELD, HELD).forEach(this::review);
    }

    private void analyse(RecordingRow row) {
        try {
            results.make(row);
            LOG.info("Recording {} analysed", row.id());
        } catch (IOException e) {
            LOG.warn("Recording {} cannot be used: {}", row.id(), e.getMessage());
            results.unusable(row, e.getMessage());
        } catch (RuntimeException e) {
            LOG.error("Recording {} could not be analysed; it is tried again", row.id(), e);
        }
    }

    private void review(RecordingRow row) {
        var source = new Source("recording", row.sender(), 0, clock.instant());
        try (Recording recording = StoredRecording.open(store.resolve(row.path()))) {
            var header = recording.header();
            if (ledger.write(t -> match.review(t, row, header, source)).join()) {
                LOG.info("Recording {} is no longer held", row.id());
            }
        } catch (IOException | CompletionException e) {
            LOG.warn("Held recording {} could not be looked at: {}", row.id(), e.getMessage());
        }
    }

    private List<RecordingRow> byState(State state, int limit) {
        return ledger.read(tables -> tables.recordings().byState(state, limit));
    }
}

package dev.isoline.recordings;

import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.intake.Source;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.RecordingTable.RecordingRow;
import dev.isoline.ledger.RecordingTable.State;
import dev.isoline.order.ContentError;
import java.io.IOException;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentHashMap;
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

    /** A full disk or a busy store may pass; a recording that always fails must not go round. */
    private static final int TRIES = 5;

    private final Ledger ledger;
    private final RecordingStore store;
    private final RecordingMatch match;
    private final ResultMaker results;
    private final Clock clock;
    private final Map<String, Integer> failures = new ConcurrentHashMap<>();

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
    @Scheduled(fixedDelay = 1_000)
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
            failures.remove(row.id());
            LOG.info("Recording {} analysed", row.id());
        } catch (RecordingException | ContentError e) {
            unusable(row, e.getMessage());
        } catch (IOException | RuntimeException e) {
            // The message of an unforeseen fault may quote a patient, so only its place is logged.
            LOG.error(
                    "Recording {} could not be analysed: {} at {}",
                    row.id(),
                    e.getClass().getName(),
                    Arrays.stream(e.getStackTrace()).limit(8).toList());
            if (failures.merge(row.id(), 1, Integer::sum) == TRIES) {
                unusable(row, "The program could not analyse the recording; a person has to look.");
            }
        }
    }

    private void unusable(RecordingRow row, String problem) {
        LOG.warn("Recording {} cannot be used: {}", row.id(), problem);
        failures.remove(row.id());
        results.unusable(row, problem);
    }

    private void review(RecordingRow row) {
        var source = new Source("recording", row.sender(), 0, clock.instant());
        try (Recording recording = store.open(row.path())) {
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

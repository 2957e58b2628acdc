package dev.isoline.worklist;

import dev.isoline.dicom.spi.FindProvider;
import dev.isoline.dicom.spi.FindRequest;
import dev.isoline.dicom.spi.Pending;
import dev.isoline.dicom.spi.Refused;
import dev.isoline.dicom.spi.Status;
import dev.isoline.ledger.AuditTable.Event;
import dev.isoline.ledger.Ledger;
import java.io.IOException;
import java.time.Clock;
import org.springframework.stereotype.Component;

/**
 * Modality Worklist SCP, PS3.4 annex K: finds the orders a recorder station asks for. Every query
 * is an audit event.
 */
@Component
public class Worklist implements FindProvider {

    private final Ledger ledger;
    private final Clock clock;

    public Worklist(Ledger ledger, Clock clock) {
        this.ledger = ledger;
        this.clock = clock;
    }

    @Override
    public Status find(FindRequest request, Pending pending) throws IOException {
        var answers = new Answers(pending);
        Status end = Status.UNABLE_TO_PROCESS;
        try {
            WorklistKeys keys = keys(request);
            end = answers.send(keys, new WorklistPages(ledger, keys.search()));
            return end;
        } catch (Refused e) {
            end = e.status();
            throw e;
        } finally {
            audit(request, end, answers.sent());
        }
    }

    private static WorklistKeys keys(FindRequest request) throws Refused {
        try {
            return WorklistKeys.of(request.keys(), request.peer().calling().value());
        } catch (UnusableKey e) {
            throw new Refused(Status.DOES_NOT_MATCH_SOP_CLASS.because(e.getMessage()));
        }
    }

    private void audit(FindRequest request, Status end, int sent) {
        String outcome = "%04XH, %d sent".formatted(end.code(), sent);
        String actor = "dicom:" + request.peer().calling();
        var event = new Event(clock.instant(), actor, "dicom C-FIND", "Worklist", outcome);
        ledger.write(
                        tables -> {
                            tables.audit().add(event);
                            return null;
                        })
                .join();
    }
}

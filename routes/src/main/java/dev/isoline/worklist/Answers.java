package dev.isoline.worklist;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.spi.Pending;
import dev.isoline.dicom.spi.Status;
import java.io.IOException;
import java.util.Iterator;

/** The pending responses of one query, counted. */
final class Answers {

    private final Pending pending;
    private int sent;

    Answers(Pending pending) {
        this.pending = pending;
    }

    int sent() {
        return sent;
    }

    /**
     * Matches what was found and sends it as it comes.
     *
     * @return how the query ended
     */
    Status send(WorklistKeys keys, Iterator<DataSet> found) throws IOException {
        Status status = keys.areCarried() ? Status.PENDING : Status.PENDING_KEYS_NOT_SUPPORTED;
        while (found.hasNext()) {
            DataSet item = keys.seen(found.next());
            if (pending.cancelled()) {
                return Status.CANCEL;
            }
            if (keys.match(item)) {
                if (!pending.send(keys.answer(item), status)) {
                    return Status.CANCEL;
                }
                sent++;
            }
        }
        return Status.SUCCESS;
    }
}

package dev.isoline.dicom.spi;

import dev.isoline.dicom.DataSet;
import java.io.IOException;

/** Sends the pending responses of a C-FIND. */
public interface Pending {

    /**
     * Sends one; returns when it is on its way, so that a slow requestor slows its query down.
     *
     * @param status {@link Status#PENDING} or {@link Status#PENDING_KEYS_NOT_SUPPORTED}
     * @return false where nothing was sent because the requestor has cancelled
     * @throws IOException where the association has ended
     */
    boolean send(DataSet match, Status status) throws IOException;

    /** True once a C-CANCEL for this request arrived or the association ended. */
    boolean cancelled();
}

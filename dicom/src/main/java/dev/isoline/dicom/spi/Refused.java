package dev.isoline.dicom.spi;

import java.io.IOException;

/** A provider refuses a request with a status. */
public final class Refused extends IOException {

    private static final long serialVersionUID = 1;

    private final transient Status status;

    /**
     * @param status a failure, its comment being the reason the requestor is told
     */
    public Refused(Status status) {
        super(status.toString());
        this.status = status;
    }

    public Status status() {
        return status;
    }
}

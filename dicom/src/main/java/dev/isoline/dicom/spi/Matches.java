package dev.isoline.dicom.spi;

import dev.isoline.dicom.DataSet;
import java.io.IOException;

/** Takes the matches of a C-FIND as they arrive. */
@FunctionalInterface
public interface Matches {

    /**
     * One pending response, PS3.4 K.4.1.3.
     *
     * @param match the identifier it carried
     * @param status {@link Status#PENDING} or {@link Status#PENDING_KEYS_NOT_SUPPORTED}
     * @return false to cancel (C-CANCEL): no further match is handed over
     */
    boolean match(DataSet match, Status status) throws IOException;
}

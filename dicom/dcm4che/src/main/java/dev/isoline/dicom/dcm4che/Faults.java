package dev.isoline.dicom.dcm4che;

import dev.isoline.dicom.spi.Abort;
import dev.isoline.dicom.spi.Rejection;
import java.io.IOException;
import java.io.InterruptedIOException;
import org.dcm4che3.net.pdu.AAbort;
import org.dcm4che3.net.pdu.AAssociateRJ;

/** dcm4che's exceptions in our words. */
final class Faults {

    interface Operation<T> {
        T run() throws IOException, InterruptedException;
    }

    private Faults() {}

    /**
     * dcm4che does not say which side aborted; an abort that is met here is taken as the peer's.
     */
    static <T> T translated(Operation<T> operation) throws IOException {
        try {
            return operation.run();
        } catch (AAssociateRJ e) {
            throw new Rejection(e.getResult(), e.getSource(), e.getReason());
        } catch (AAbort e) {
            throw new Abort(true, e.getSource(), e.getReason());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new InterruptedIOException("interrupted while waiting for the peer");
        }
    }
}

package dev.isoline.dicom.dimse;

import dev.isoline.dicom.spi.Refused;
import dev.isoline.dicom.spi.Status;
import java.io.IOException;
import java.lang.System.Logger.Level;

/** The status a provider answers with, whatever happens in it. */
final class Answer {

    private static final System.Logger LOG = System.getLogger(Answer.class.getName());

    interface Provider {
        Status answer() throws IOException;
    }

    private Answer() {}

    /**
     * @param failure what the peer is told where the provider throws; the log says what it threw
     *     and where, but not its text, which may concern a patient
     */
    static Status of(Provider provider, Status failure) {
        try {
            return provider.answer();
        } catch (Refused e) {
            return e.status();
        } catch (IOException | RuntimeException e) {
            LOG.log(Level.WARNING, () -> "a provider failed: " + e.getClass().getName() + where(e));
            return failure;
        }
    }

    private static String where(Exception e) {
        StackTraceElement[] trace = e.getStackTrace();
        return trace.length == 0 ? "" : " at " + trace[0];
    }
}

package dev.isoline.dicom.dcm4che;

import dev.isoline.dicom.spi.Refused;
import dev.isoline.dicom.spi.Status;
import java.io.IOException;
import java.lang.System.Logger.Level;
import org.dcm4che3.data.Attributes;
import org.dcm4che3.data.Tag;
import org.dcm4che3.data.VR;

/** Statuses in command sets, PS3.7 annex C and E.1. */
final class Commands {

    private static final System.Logger LOG = System.getLogger(Commands.class.getName());

    interface Provider {
        Status answer() throws IOException;
    }

    private Commands() {}

    static Status status(Attributes command) {
        return new Status(command.getInt(Tag.Status, 0), command.getString(Tag.ErrorComment, ""));
    }

    static Attributes with(Attributes response, Status status) {
        response.setInt(Tag.Status, VR.US, status.code());
        if (!status.comment().isEmpty()) {
            response.setString(Tag.ErrorComment, VR.LO, status.comment());
        }
        return response;
    }

    /**
     * What a provider answers, whatever happens in it.
     *
     * @param failure what the peer is told where it throws; the log says what it threw and where,
     *     but not its text, which may concern a patient
     */
    static Status answer(Provider provider, Status failure) {
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

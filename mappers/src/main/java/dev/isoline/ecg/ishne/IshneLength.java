package dev.isoline.ecg.ishne;

import dev.isoline.ecg.Faults;
import dev.isoline.ecg.RecordingException;

/**
 * How many samples each lead has. The header counts those of one lead; some writers count those of
 * all leads: which it is, the size of the file tells.
 */
final class IshneLength {

    private final IshneHeader header;
    private final long dataBytes;

    IshneLength(IshneHeader header, long size) {
        this.header = header;
        dataBytes = Math.max(0, size - header.dataOffset());
    }

    /** A file shorter than its header says is a fault. */
    long samples(Faults faults) throws RecordingException {
        long announced = header.samples();
        long held = dataBytes / header.frameBytes();
        if (held == 0) {
            throw new RecordingException("The ISHNE file holds no samples.");
        }
        if (announced <= 0) {
            faults.note("The ISHNE header does not say how long the recording is.");
            return held;
        }
        if (countsAllLeads()) {
            faults.note("The ISHNE header counts the samples of all leads together.");
            return announced / header.leads().size();
        }
        if (held < announced) {
            faults.found(missing(announced));
            return held;
        }
        if (dataBytes > announced * header.frameBytes()) {
            faults.note("The ISHNE file goes on after its last sample; the rest was left out.");
        }
        return announced;
    }

    private boolean countsAllLeads() {
        return header.leads().size() > 1
                && header.samples() * Short.BYTES == dataBytes
                && header.samples() % header.leads().size() == 0;
    }

    private String missing(long announced) {
        return "The ISHNE file is truncated: its header announces "
                + announced
                + " samples of "
                + header.leads().size()
                + " leads, "
                + (announced * header.frameBytes() - dataBytes)
                + " bytes are missing.";
    }
}

package dev.isoline.ecg.wfdb;

import dev.isoline.ecg.Faults;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import java.io.IOException;
import java.util.List;
import java.util.Map;

/** How many frames a WFDB record holds, by its header and by the size of its signal files. */
final class WfdbLength {

    /** Samples that fill up a group of the packed formats. */
    private static final int LARGEST_PADDING = 2;

    private final long announced;
    private final RecordingFiles files;
    private final Faults faults;
    private final String place;

    /**
     * @param announced frames by the header, 0 when it does not say
     * @param place of the record among others, for the faults: empty or {@code Segment 2: }
     */
    WfdbLength(long announced, RecordingFiles files, Faults faults, String place) {
        this.announced = announced;
        this.files = files;
        this.faults = faults;
        this.place = place;
    }

    /** A signal file that is absent or ends early is a fault. */
    long frames(Map<String, List<WfdbSignal>> groups) throws IOException {
        long fewest = Long.MAX_VALUE;
        long most = 0;
        int file = 0;
        for (var group : groups.entrySet()) {
            String role = place + "Signal file " + ++file + " of " + groups.size();
            check(group.getKey(), group.getValue(), role);
            long held = framesIn(files.size(group.getKey()), group.getValue());
            fewest = Math.min(fewest, held);
            most = Math.max(most, held);
        }
        if (groups.isEmpty()) {
            most = announced;
        }
        if (most == 0) {
            throw new RecordingException(place + "The WFDB record holds no samples.");
        }
        return announced > 0 ? Math.min(announced, most) : common(fewest, most);
    }

    private void check(String name, List<WfdbSignal> signals, String role) throws IOException {
        if (!files.names().contains(name)) {
            throw new RecordingException(
                    role + " that the WFDB header names is not beside the header.");
        }
        if (signals.stream().map(WfdbSignal::format).distinct().count() > 1
                || signals.stream().mapToLong(WfdbSignal::offset).distinct().count() > 1) {
            throw new RecordingException(role + " of the WFDB record mixes formats or offsets.");
        }
        if (announced > 0) {
            checkSize(files.size(name), signals, role);
        } else {
            checkEnd(files.size(name), signals, role);
        }
    }

    private void checkSize(long size, List<WfdbSignal> signals, String role)
            throws RecordingException {
        long bytes = bytes(announced, signals);
        if (size < bytes) {
            faults.found(
                    role
                            + " of the WFDB record is truncated: "
                            + (bytes - size)
                            + " of "
                            + bytes
                            + " bytes are missing.");
        }
        if (framesIn(size, signals) >= announced + signals.get(0).format().groupSamples()) {
            faults.note(
                    role + " goes on after the end the WFDB header gives; the rest was left out.");
        }
    }

    /** Without a length in the header a file has to end with a frame. */
    private void checkEnd(long size, List<WfdbSignal> signals, String role)
            throws RecordingException {
        var format = signals.get(0).format();
        long rest = size - bytes(framesIn(size, signals), signals);
        if (rest >= (format.groupSamples() == 1 ? 1 : format.groupBytes())) {
            faults.found(
                    role
                            + " of the WFDB record ends within a frame: "
                            + rest
                            + " bytes are left over.");
        }
    }

    /** Signal files of one length, but for the padding of a packed format. */
    private long common(long fewest, long most) throws RecordingException {
        if (most - fewest > LARGEST_PADDING) {
            faults.found(
                    place
                            + "The signal files of the WFDB record hold from "
                            + fewest
                            + " to "
                            + most
                            + " frames; "
                            + (most - fewest)
                            + " are missing.");
            return most;
        }
        return fewest;
    }

    private static long bytes(long frames, List<WfdbSignal> signals) {
        return signals.get(0).offset()
                + signals.get(0).format().bytes(frames * WfdbSignalFile.perFrame(signals));
    }

    /** Whole frames in a file of so many bytes. */
    static long framesIn(long size, List<WfdbSignal> signals) {
        long samples = signals.get(0).format().samples(Math.max(0, size - signals.get(0).offset()));
        return samples / WfdbSignalFile.perFrame(signals);
    }
}

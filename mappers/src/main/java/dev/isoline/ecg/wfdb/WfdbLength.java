package dev.isoline.ecg.wfdb;

import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import java.io.IOException;
import java.util.List;
import java.util.Map;

/** How many frames a WFDB record holds, by its header and by the size of its signal files. */
final class WfdbLength {

    private final WfdbHeader header;
    private final RecordingFiles files;

    WfdbLength(WfdbHeader header, RecordingFiles files) {
        this.header = header;
        this.files = files;
    }

    /** Refuses a record whose signal files are absent or end early. */
    long frames(Map<String, List<WfdbSignal>> groups, List<String> notes) throws IOException {
        long fewest = Long.MAX_VALUE;
        int file = 0;
        for (var group : groups.entrySet()) {
            var signals = group.getValue();
            String role = "Signal file " + ++file + " of " + groups.size();
            checkGroup(group.getKey(), signals, role);
            long size = files.size(group.getKey());
            checkSize(size, signals, role, notes);
            fewest = Math.min(fewest, framesIn(size, signals));
        }
        if (fewest == 0) {
            throw new RecordingException("The WFDB record holds no samples.");
        }
        return header.frames() > 0 ? header.frames() : fewest;
    }

    private void checkGroup(String name, List<WfdbSignal> signals, String role)
            throws RecordingException {
        if (!files.names().contains(name)) {
            throw new RecordingException(
                    role + " that the WFDB header names is not beside the header.");
        }
        if (signals.stream().map(WfdbSignal::format).distinct().count() > 1) {
            throw new RecordingException(role + " of the WFDB record mixes formats.");
        }
    }

    private void checkSize(long size, List<WfdbSignal> signals, String role, List<String> notes)
            throws RecordingException {
        long announced = bytes(header.frames(), signals);
        if (header.frames() > 0 && size < announced) {
            throw new RecordingException(
                    role
                            + " of the WFDB record is truncated: "
                            + (announced - size)
                            + " of "
                            + announced
                            + " bytes are missing.");
        }
        if (header.frames() > 0 && framesIn(size, signals) > header.frames() + LARGEST_PADDING) {
            notes.add(
                    role + " goes on after the end the WFDB header gives; the rest was left out.");
        }
    }

    private static final int LARGEST_PADDING = 1;

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

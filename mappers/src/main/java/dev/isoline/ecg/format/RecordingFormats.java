package dev.isoline.ecg.format;

import dev.isoline.ecg.ChannelBytes;
import dev.isoline.ecg.Damage;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import dev.isoline.ecg.csv.CsvRecording;
import dev.isoline.ecg.dicom.DicomRecording;
import dev.isoline.ecg.edf.EdfRecording;
import dev.isoline.ecg.ishne.IshneRecording;
import dev.isoline.ecg.wfdb.WfdbRecording;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Finds out by its first bytes, never by its name, which format a recording has, and opens it. */
public final class RecordingFormats {

    private static final int LOOK = 4096;

    private record Candidate(String name, Kind kind) {

        boolean isRecording() {
            return kind.compareTo(Kind.WFDB) <= 0;
        }
    }

    private RecordingFormats() {}

    /**
     * Opens the one recording among the files.
     *
     * @throws RecordingException when there is none, more than one, or it is short or damaged
     */
    public static Recording open(RecordingFiles files) throws IOException {
        return open(files, Damage.REFUSE);
    }

    /**
     * Opens the one recording among the files.
     *
     * @throws RecordingException when there is none, more than one, or it cannot be read
     */
    public static Recording open(RecordingFiles files, Damage damage) throws IOException {
        var candidates = new ArrayList<Candidate>();
        for (String name : files.names()) {
            candidates.add(new Candidate(name, kind(files, name)));
        }
        var found = recordings(files, candidates);
        if (found.isEmpty()) {
            throw none(candidates);
        }
        if (found.size() > 1) {
            throw new RecordingException(
                    "There are " + found.size() + " recordings here; give one of them.");
        }
        return open(files, found.get(0), damage);
    }

    /**
     * Which of the files belong to the recording of the named one: a WFDB header names its parts.
     *
     * @return names of files that are there
     */
    public static Set<String> parts(RecordingFiles files, String name) throws IOException {
        var parts = new HashSet<String>();
        parts.add(name);
        try {
            if (kind(files, name) == Kind.WFDB) {
                parts.addAll(WfdbRecording.parts(files, name));
            }
        } catch (RecordingException e) {
            // whoever opens the recording is told
        }
        parts.retainAll(files.names());
        return parts;
    }

    /** A text that merely looks like a WFDB header steps back behind a file called one. */
    private static List<Candidate> recordings(RecordingFiles files, List<Candidate> candidates)
            throws IOException {
        var found = candidates.stream().filter(Candidate::isRecording).toList();
        var sure =
                found.stream()
                        .filter(file -> file.kind() != Kind.WFDB || file.name().endsWith(".hea"))
                        .toList();
        return withoutParts(files, sure.isEmpty() ? found : sure);
    }

    /** Headers of segments are no recordings of their own. */
    private static List<Candidate> withoutParts(RecordingFiles files, List<Candidate> found)
            throws IOException {
        if (found.size() < 2) {
            return found;
        }
        var parts = new HashSet<String>();
        for (Candidate file : found) {
            var own = parts(files, file.name());
            own.remove(file.name());
            parts.addAll(own);
        }
        return found.stream().filter(file -> !parts.contains(file.name())).toList();
    }

    private static Recording open(RecordingFiles files, Candidate file, Damage damage)
            throws IOException {
        return switch (file.kind()) {
            case DICOM -> DicomRecording.open(files, file.name(), damage);
            case EDF -> EdfRecording.open(files, file.name(), damage);
            case ISHNE -> IshneRecording.open(files, file.name(), damage);
            case CSV -> CsvRecording.open(files, file.name(), damage);
            case WFDB -> WfdbRecording.open(files, file.name(), damage);
            default -> throw new IllegalArgumentException(file.kind() + " is no recording");
        };
    }

    private static RecordingException none(List<Candidate> candidates) {
        return new RecordingException(
                candidates.size() == 1
                        ? candidates.get(0).kind().refusal()
                        : "None of the files is a recording in a format that is read here.");
    }

    private static Kind kind(RecordingFiles files, String name) throws IOException {
        try (var channel = files.open(name)) {
            var bytes = ChannelBytes.upTo(LOOK, channel);
            return Kind.of(Arrays.copyOf(bytes.array(), bytes.limit()));
        }
    }
}

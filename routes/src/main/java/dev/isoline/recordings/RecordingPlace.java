package dev.isoline.recordings;

import dev.isoline.ecg.RecordingFiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/** Where a recording lies: a file, a folder, a zip archive, or a WFDB header among its siblings. */
public final class RecordingPlace {

    private static final byte[] ZIP = {'P', 'K', 3, 4};
    private static final byte[] ISHNE = {'I', 'S', 'H', 'N'};
    private static final byte[] EMPTY_ZIP = {'P', 'K', 5, 6};

    private RecordingPlace() {}

    /**
     * The files there. An archive is known by its first bytes; a file whose name ends in {@code
     * .hea} brings the files of its record that lie beside it, one in ISHNE format its annotations.
     *
     * @throws dev.isoline.ecg.RecordingException when an archive cannot be read safely
     * @throws java.nio.file.NoSuchFileException when nothing is there
     */
    public static RecordingFiles files(Path place) throws IOException {
        if (Files.isDirectory(place)) {
            return RecordingFolder.all(place);
        }
        byte[] start;
        try (var stream = Files.newInputStream(place)) {
            start = stream.readNBytes(ZIP.length);
        }
        if (Arrays.equals(start, ZIP) || Arrays.equals(start, EMPTY_ZIP)) {
            return new RecordingArchive(place);
        }
        if (Arrays.equals(start, ISHNE)) {
            return RecordingFolder.withAnnotations(place);
        }
        return place.toString().endsWith(".hea")
                ? RecordingFolder.ofHeader(place)
                : RecordingFolder.single(place);
    }
}

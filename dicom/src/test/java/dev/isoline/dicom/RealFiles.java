package dev.isoline.dicom;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/** Waveform objects other programs wrote: of the shared test material and of Debian's pydicom. */
public final class RealFiles {

    private static final Path DEBIAN =
            Path.of("/usr/lib/python3/dist-packages/pydicom/data/test_files/waveform_ecg.dcm");

    private RealFiles() {}

    /** Skips the test where there are none. */
    public static List<Path> all() throws IOException {
        var files = new ArrayList<Path>();
        Path shared = Path.of(System.getenv().getOrDefault("ISOLINE_SHARED", "../../shared"));
        Path dicom = shared.resolve("data/ecg/dicom");
        if (Files.isDirectory(dicom)) {
            try (Stream<Path> found = Files.list(dicom)) {
                found.filter(f -> f.toString().endsWith(".dcm")).sorted().forEach(files::add);
            }
        }
        if (Files.exists(DEBIAN)) {
            files.add(DEBIAN);
        }
        Assumptions.assumeFalse(files.isEmpty(), "no DICOM files of other programs are here");
        return files;
    }
}

package dev.isoline.conformance.partner;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The archive's folder, where DICOM objects arrive. */
public record Archive(Path folder) {

    /** Every {@code .dcm} below the folder, in name order. */
    public List<Path> objects() throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(f -> f.getFileName().toString().endsWith(".dcm")).sorted().toList();
        }
    }
}

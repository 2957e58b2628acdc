package dev.isoline.synth;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Packs the files of a record, as recorders hand them over. */
public final class ZipArchive {

    private ZipArchive() {}

    public static void pack(List<Path> files, Path archive) throws IOException {
        try (var zip = new ZipOutputStream(Files.newOutputStream(archive))) {
            for (Path file : files) {
                zip.putNextEntry(new ZipEntry(file.getFileName().toString()));
                Files.copy(file, zip);
                zip.closeEntry();
            }
        }
    }
}

package dev.isoline.recordings;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * A folder as one stream: a zip that is the same bytes whenever the folder holds the same files.
 */
final class PackedFolder {

    private PackedFolder() {}

    /** The bytes of a file; of a folder, its files as a zip. */
    static InputStream open(Path entry) throws IOException {
        if (!Files.isDirectory(entry)) {
            return new BufferedInputStream(Files.newInputStream(entry));
        }
        Path zip = Files.createTempFile("recording", ".zip");
        try (OutputStream out = Files.newOutputStream(zip)) {
            pack(entry, out);
            return Files.newInputStream(zip, StandardOpenOption.DELETE_ON_CLOSE);
        } catch (IOException e) {
            Files.deleteIfExists(zip);
            throw e;
        }
    }

    private static void pack(Path folder, OutputStream out) throws IOException {
        try (var zip = new ZipOutputStream(out);
                Stream<Path> listed = Files.list(folder)) {
            List<Path> files = listed.filter(Files::isRegularFile).sorted().toList();
            for (Path file : files) {
                var entry = new ZipEntry(file.getFileName().toString());
                entry.setTime(0);
                zip.putNextEntry(entry);
                Files.copy(file, zip);
                zip.closeEntry();
            }
        }
    }
}

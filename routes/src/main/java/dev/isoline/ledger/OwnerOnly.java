package dev.isoline.ledger;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

/** Files and folders of patient data, made so that only their owner can read them. */
final class OwnerOnly {

    private OwnerOnly() {}

    static void createFile(Path file) throws IOException {
        if (!Files.exists(file)) {
            Files.createFile(file, permissions(file, "rw-------"));
        }
    }

    static void createFolder(Path folder) throws IOException {
        Files.createDirectories(folder, permissions(folder, "rwx------"));
    }

    private static FileAttribute<?>[] permissions(Path path, String posix) {
        return path.getFileSystem().supportedFileAttributeViews().contains("posix")
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(posix))
                }
                : new FileAttribute<?>[0];
    }
}

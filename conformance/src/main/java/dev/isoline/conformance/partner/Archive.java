package dev.isoline.conformance.partner;

import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Tag;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
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

    /** Those of one SOP class. */
    public List<Path> objects(String sopClassUid) throws IOException {
        var found = new ArrayList<Path>();
        for (Path file : objects()) {
            if (sopClassUid.equals(sopClassUid(file))) {
                found.add(file);
            }
        }
        return found;
    }

    private static String sopClassUid(Path file) throws IOException {
        try (var channel = FileChannel.open(file)) {
            return Part10.read(channel, ReadLimits.DEFAULT)
                    .meta()
                    .text(Tag.MediaStorageSOPClassUID)
                    .orElse("");
        }
    }
}

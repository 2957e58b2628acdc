package dev.isoline.ecg;

import java.io.IOException;
import java.nio.channels.ReadableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Files of a recording as they lie in a folder. */
public record FilesInFolder(Path folder, List<String> names) implements RecordingFiles {

    @Override
    public long size(String name) throws IOException {
        return Files.size(folder.resolve(name));
    }

    @Override
    public ReadableByteChannel open(String name) throws IOException {
        return Files.newByteChannel(folder.resolve(name));
    }
}

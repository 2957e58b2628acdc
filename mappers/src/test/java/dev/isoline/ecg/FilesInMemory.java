package dev.isoline.ecg;

import java.nio.channels.ReadableByteChannel;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Files of a recording made by a test. */
public final class FilesInMemory implements RecordingFiles {

    private final Map<String, byte[]> files;

    public FilesInMemory(Map<String, byte[]> files) {
        this.files = new TreeMap<>(files);
    }

    public static FilesInMemory of(String name, byte[] bytes) {
        return new FilesInMemory(Map.of(name, bytes));
    }

    @Override
    public List<String> names() {
        return List.copyOf(files.keySet());
    }

    @Override
    public long size(String name) {
        return files.get(name).length;
    }

    @Override
    public ReadableByteChannel open(String name) {
        return new SeekableFile(files.get(name));
    }
}

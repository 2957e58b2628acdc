package dev.isoline.recordings;

import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import java.io.IOException;
import java.nio.channels.ReadableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;

/** The files of one folder, or some of them; folders within it are not looked into. */
final class RecordingFolder implements RecordingFiles {

    private static final int MOST_FILES = 1_000;

    private final SortedMap<String, Path> files;

    private RecordingFolder(SortedMap<String, Path> files) {
        this.files = files;
    }

    /** One file alone. */
    static RecordingFolder single(Path file) {
        return new RecordingFolder(new TreeMap<>(Map.of(name(file), file)));
    }

    /** All files of the folder whose names do not begin with a dot. */
    static RecordingFolder all(Path folder) throws IOException {
        return some(folder, name -> true);
    }

    /** A WFDB header and the files beside it, other headers left out. */
    static RecordingFolder ofHeader(Path header) throws IOException {
        return some(
                header.toAbsolutePath().getParent(),
                name -> name.equals(name(header)) || !name.endsWith(".hea"));
    }

    private static RecordingFolder some(Path folder, Predicate<String> wanted) throws IOException {
        var files = new TreeMap<String, Path>();
        try (var entries = Files.newDirectoryStream(folder, Files::isRegularFile)) {
            for (var file : entries) {
                if (!name(file).startsWith(".") && wanted.test(name(file))) {
                    files.put(name(file), file);
                }
                if (files.size() > MOST_FILES) {
                    throw new RecordingException("The folder holds more than 1000 files.");
                }
            }
        }
        return new RecordingFolder(files);
    }

    private static String name(Path file) {
        return file.getFileName().toString();
    }

    @Override
    public List<String> names() {
        return List.copyOf(files.keySet());
    }

    @Override
    public long size(String name) throws IOException {
        return Files.size(file(name));
    }

    @Override
    public ReadableByteChannel open(String name) throws IOException {
        return Files.newByteChannel(file(name));
    }

    private Path file(String name) throws RecordingException {
        var file = files.get(name);
        if (file == null) {
            throw new RecordingException("The recording needs a file that is not there.");
        }
        return file;
    }
}

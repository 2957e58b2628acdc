package dev.isoline.recordings;

import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import dev.isoline.ecg.format.RecordingFormats;
import java.io.IOException;
import java.nio.channels.ReadableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/** The files of one folder, or some of them; folders within it are not looked into. */
final class RecordingFolder implements RecordingFiles {

    private static final int MOST_FILES = 10_000;

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
        var files = new TreeMap<String, Path>();
        try (var entries = Files.newDirectoryStream(folder, Files::isRegularFile)) {
            for (var file : entries) {
                if (!name(file).startsWith(".")) {
                    files.put(name(file), file);
                }
                if (files.size() > MOST_FILES) {
                    throw new RecordingException(
                            "The folder holds more than " + MOST_FILES + " files.");
                }
            }
        }
        return new RecordingFolder(files);
    }

    /** A WFDB header and, of the files beside it, those its record consists of. */
    static RecordingFolder ofHeader(Path header) throws IOException {
        var beside = all(header.toAbsolutePath().getParent());
        var parts = RecordingFormats.parts(beside, name(header));
        beside.files.keySet().retainAll(parts);
        return beside;
    }

    /**
     * A file and the one beside it that an ISHNE recorder gives its annotations: same name, .ann.
     */
    static RecordingFolder withAnnotations(Path recording) {
        var files = new TreeMap<String, Path>();
        files.put(name(recording), recording);
        String base = name(recording).replaceFirst("\\.[^.]*$", "");
        for (String extension : List.of(".ann", ".ANN")) {
            Path beside = recording.resolveSibling(base + extension);
            if (Files.isRegularFile(beside)) {
                files.put(name(beside), beside);
                return new RecordingFolder(files);
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

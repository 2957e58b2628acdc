package dev.isoline.recordings;

import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import java.io.IOException;
import java.nio.channels.ReadableByteChannel;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

/**
 * The files in a zip archive, read in place: nothing is unpacked to disk. Folders within it are
 * flattened; an archive in which two files then have one name, or that names a place outside
 * itself, or that grows out of proportion, is refused.
 */
final class RecordingArchive implements RecordingFiles {

    private static final int MOST_FILES = 1_000;
    private static final long MOST_BYTES = 32L << 30;
    private static final long SMALL = 16L << 20;
    private static final long LARGEST_RATIO = 200;

    private final Path archive;
    private final SortedMap<String, String> entries = new TreeMap<>();
    private long total;

    /** Reads the table of contents. */
    RecordingArchive(Path archive) throws IOException {
        this.archive = archive;
        try (var zip = openZip()) {
            for (var entry : Collections.list(zip.entries())) {
                add(entry);
            }
        }
    }

    private ZipFile openZip() throws IOException {
        try {
            return new ZipFile(archive.toFile());
        } catch (ZipException e) {
            throw new RecordingException("The zip archive is damaged or incomplete.");
        }
    }

    private void add(ZipEntry entry) throws RecordingException {
        var path = entry.getName().replace('\\', '/');
        if (path.startsWith("/") || path.contains(":") || List.of(path.split("/")).contains("..")) {
            throw new RecordingException("The zip archive names a place outside itself.");
        }
        var name = path.substring(path.lastIndexOf('/') + 1);
        if (entry.isDirectory() || name.startsWith(".") || path.startsWith("__MACOSX/")) {
            return;
        }
        checkSize(entry);
        if (entries.put(name, entry.getName()) != null) {
            throw new RecordingException("The zip archive holds two files of one name.");
        }
        if (entries.size() > MOST_FILES) {
            throw new RecordingException("The zip archive holds more than 1000 files.");
        }
    }

    private void checkSize(ZipEntry entry) throws RecordingException {
        long size = entry.getSize();
        total += Math.max(size, 0);
        if (size < 0
                || total > MOST_BYTES
                || size > SMALL && size / LARGEST_RATIO > entry.getCompressedSize()) {
            throw new RecordingException(
                    "A file in the zip archive unpacks to more than a recording could need.");
        }
    }

    @Override
    public List<String> names() {
        return List.copyOf(entries.keySet());
    }

    @Override
    public long size(String name) throws IOException {
        try (var zip = openZip()) {
            return entry(zip, name).getSize();
        }
    }

    @Override
    public ReadableByteChannel open(String name) throws IOException {
        var zip = openZip();
        try {
            var entry = entry(zip, name);
            return new ArchivedFile(zip, zip.getInputStream(entry), entry.getSize());
        } catch (IOException | RuntimeException e) {
            zip.close();
            throw e;
        }
    }

    private ZipEntry entry(ZipFile zip, String name) throws RecordingException {
        var entry = entries.containsKey(name) ? zip.getEntry(entries.get(name)) : null;
        if (entry == null) {
            throw new RecordingException("The recording needs a file that is not there.");
        }
        return entry;
    }
}

package dev.isoline.recordings;

import dev.isoline.intake.Source;
import dev.isoline.settings.IsolineProperties;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.stereotype.Component;

/**
 * Takes recordings out of a folder: an EDF file, a zip, or a folder with a WFDB record. An entry is
 * taken when nothing about it has changed between two sweeps; it ends up in {@code done}, or in
 * {@code refused} with the reason beside it.
 */
@Component
@ConditionalOnProperty("isoline.recordings.watch")
public class WatchedFolder {

    private static final Logger LOG = LoggerFactory.getLogger(WatchedFolder.class);

    private final RecordingReception reception;
    private final Path folder;
    private final Clock clock;
    private Map<Path, String> seen = new HashMap<>();

    public WatchedFolder(IsolineProperties properties, RecordingReception reception, Clock clock) {
        this.reception = reception;
        this.folder = properties.recordings().watch();
        this.clock = clock;
    }

    /** One look at the folder; a fault of one entry does not keep the others waiting. */
    public void sweep() throws IOException {
        Files.createDirectories(folder);
        var now = new HashMap<Path, String>();
        for (Path entry : entries()) {
            String state = state(entry);
            if (state.equals(seen.get(entry))) {
                tryToTake(entry);
            } else {
                now.put(entry, state);
            }
        }
        seen = now;
    }

    private List<Path> entries() throws IOException {
        try (Stream<Path> listed = Files.list(folder)) {
            return listed.filter(WatchedFolder::isRecording).sorted().toList();
        }
    }

    /** Dot files and unfinished copies are left alone; so are the folders this class makes. */
    private static boolean isRecording(Path entry) {
        String name = entry.getFileName().toString();
        return !name.startsWith(".")
                && !name.endsWith(".part")
                && !name.endsWith(".tmp")
                && !name.endsWith(".problem.txt")
                && !name.equals("done")
                && !name.equals("refused");
    }

    /** A name or a message of the file system may hold a patient's name; neither is logged. */
    private void tryToTake(Path entry) {
        try {
            take(entry);
        } catch (IOException | RuntimeException e) {
            LOG.warn(
                    "An entry of the watched folder could not be taken and is tried again: {}",
                    e.getClass().getName());
        }
    }

    private void take(Path entry) throws IOException {
        var source = new Source("recording", "watched-folder", 0, clock.instant());
        try (InputStream bytes = PackedFolder.open(entry)) {
            var received = reception.receive(bytes, "", baseName(entry), source);
            LOG.info("Recording {} taken from the watched folder", received.row().id());
            move(entry, "done");
        } catch (RecordingRefused refused) {
            LOG.warn("An entry of the watched folder was refused: {}", refused.getMessage());
            Path there = move(entry, "refused");
            Files.writeString(
                    there.resolveSibling(there.getFileName() + ".problem.txt"),
                    refused.getMessage() + System.lineSeparator());
        }
    }

    private Path move(Path entry, String where) throws IOException {
        Path target = Files.createDirectories(folder.resolve(where)).resolve(entry.getFileName());
        for (int n = 2; Files.exists(target); n++) {
            target = target.resolveSibling(entry.getFileName() + "." + n);
        }
        return Files.move(entry, target, StandardCopyOption.ATOMIC_MOVE);
    }

    private static String baseName(Path entry) {
        return entry.getFileName().toString().replaceFirst("\\.[A-Za-z]{2,4}$", "");
    }

    /** Names, sizes and times of all that is in it. */
    private static String state(Path entry) throws IOException {
        try (Stream<Path> files = Files.walk(entry)) {
            return String.join("\n", files.sorted().map(WatchedFolder::fileState).toList());
        } catch (UncheckedIOException e) {
            return "changing";
        }
    }

    private static String fileState(Path file) {
        try {
            return file + " " + Files.size(file) + " " + Files.getLastModifiedTime(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

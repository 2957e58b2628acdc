package dev.isoline.ecg.wfdb;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Block;
import dev.isoline.ecg.Damage;
import dev.isoline.ecg.Faults;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import dev.isoline.ecg.RecordingHeader;
import dev.isoline.ecg.RhythmEpisode;
import dev.isoline.ecg.Stretch;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A recording as a WFDB record: header, signal files or segments, and reference annotations where a
 * file named like the record with {@code .atr} is there. A header names nobody: its comments are
 * free text and are not read as an identity.
 */
public final class WfdbRecording implements Recording {

    private final RecordingFiles files;
    private final WfdbHeader wfdb;
    private final Faults faults;
    private final WfdbFrames frames;

    private WfdbRecording(RecordingFiles files, String headerName, Damage damage)
            throws IOException {
        this.files = files;
        faults = new Faults(damage);
        wfdb = WfdbHeader.read(files, headerName);
        frames =
                wfdb.isSegmented()
                        ? new WfdbSegments(wfdb, files, faults)
                        : new WfdbRecord(wfdb, files, faults);
    }

    /** Whether a text that begins so is a WFDB header. */
    public static boolean begins(byte[] start) {
        return WfdbHeader.begins(new String(start, StandardCharsets.UTF_8));
    }

    /** Opens the record of the named header. */
    public static WfdbRecording open(RecordingFiles files, String headerName, Damage damage)
            throws IOException {
        return new WfdbRecording(files, headerName, damage);
    }

    /** Names of the files the record of the named header consists of, be they there or not. */
    public static Set<String> parts(RecordingFiles files, String headerName) throws IOException {
        var parts = new LinkedHashSet<String>();
        var header = WfdbHeader.read(files, headerName);
        parts.add(headerName);
        parts.add(header.name() + ".atr");
        header.signals().forEach(signal -> parts.add(signal.file()));
        for (var segment : header.segments()) {
            if (parts.add(segment.headerFile()) && files.names().contains(segment.headerFile())) {
                var signals = WfdbHeader.read(files, segment.headerFile()).signals();
                signals.forEach(signal -> parts.add(signal.file()));
            }
        }
        return parts;
    }

    @Override
    public RecordingHeader header() {
        return new RecordingHeader(
                "WFDB " + frames.formats(),
                RecordingHeader.Identity.NONE,
                frames.start(),
                wfdb.hz() * frames.perFrame(),
                frames.leads(),
                frames.frames() * frames.perFrame(),
                "",
                faults.notes());
    }

    @Override
    public Optional<Block> next() throws IOException {
        return frames.next();
    }

    @Override
    public List<Beat> referenceBeats() throws IOException {
        return annotations().map(WfdbAnnotations::beats).orElse(List.of());
    }

    @Override
    public List<Stretch> flutter() throws IOException {
        return annotations().map(WfdbAnnotations::flutter).orElse(List.of());
    }

    @Override
    public List<RhythmEpisode> rhythms() throws IOException {
        long end = frames.frames() * frames.perFrame();
        return annotations().map(marked -> marked.rhythms(end)).orElse(List.of());
    }

    private Optional<WfdbAnnotations> annotations() throws IOException {
        var name = wfdb.name() + ".atr";
        if (!files.names().contains(name)) {
            return Optional.empty();
        }
        try (var channel = files.open(name)) {
            return Optional.of(WfdbAnnotations.read(channel, wfdb.hz(), frames.perFrame()));
        } catch (RecordingException e) {
            faults.found(e.getMessage());
            return Optional.empty();
        }
    }

    @Override
    public void close() throws IOException {
        frames.close();
    }
}

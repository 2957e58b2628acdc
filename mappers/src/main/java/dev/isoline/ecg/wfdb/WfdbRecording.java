package dev.isoline.ecg.wfdb;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Block;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingFiles;
import dev.isoline.ecg.RecordingHeader;
import dev.isoline.ecg.RhythmEpisode;
import dev.isoline.ecg.Stretch;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * A recording as a WFDB record: header, one or more signal files of format 16 or 212, and reference
 * annotations where a file named like the record with {@code .atr} is there. A header names nobody:
 * its comments are free text and are not read as an identity.
 */
public final class WfdbRecording implements Recording {

    private static final int BLOCK = 16 * 1024;

    private final RecordingFiles files;
    private final WfdbHeader wfdb;
    private final WfdbLeads leads;
    private final List<WfdbSignalFile> signalFiles = new ArrayList<>();
    private final short[] sums;
    private final List<String> notes = new ArrayList<>();
    private final long frames;
    private long at;

    private WfdbRecording(RecordingFiles files, String headerName) throws IOException {
        this.files = files;
        try (var channel = files.open(headerName)) {
            wfdb = WfdbHeader.read(channel);
        }
        leads = new WfdbLeads(wfdb.signals(), notes);
        sums = new short[wfdb.signals().size()];
        var groups = groups();
        frames = new WfdbLength(wfdb, files).frames(groups, notes);
        openAll(groups);
    }

    /** Whether a text that begins so is a WFDB header. */
    public static boolean begins(byte[] start) {
        return WfdbHeader.begins(new String(start, StandardCharsets.UTF_8));
    }

    /** Opens the record of the named header. */
    public static WfdbRecording open(RecordingFiles files, String headerName) throws IOException {
        return new WfdbRecording(files, headerName);
    }

    /** Signals of one file stand together and are interleaved in it. */
    private Map<String, List<WfdbSignal>> groups() {
        return wfdb.signals().stream()
                .collect(
                        Collectors.groupingBy(
                                WfdbSignal::file, LinkedHashMap::new, Collectors.toList()));
    }

    private void openAll(Map<String, List<WfdbSignal>> groups) throws IOException {
        try {
            for (var group : groups.entrySet()) {
                var signals = group.getValue();
                long held = WfdbLength.framesIn(files.size(group.getKey()), signals);
                signalFiles.add(
                        new WfdbSignalFile(
                                signals,
                                files.open(group.getKey()),
                                Math.min(held, frames + skew(signals))));
            }
        } catch (IOException | RuntimeException e) {
            close();
            throw e;
        }
    }

    private static int skew(List<WfdbSignal> signals) {
        return signals.stream().mapToInt(WfdbSignal::skew).max().orElse(0);
    }

    /** Notes grow while the recording is read: a wrong checksum shows only at the end. */
    @Override
    public RecordingHeader header() {
        return new RecordingHeader(
                "WFDB " + formats(),
                RecordingHeader.Identity.NONE,
                wfdb.start(),
                wfdb.hz() * leads.perFrame(),
                leads.leads(),
                frames * leads.perFrame(),
                "",
                List.copyOf(notes));
    }

    private String formats() {
        return wfdb.signals().stream()
                .map(signal -> String.valueOf(signal.format().number()))
                .distinct()
                .collect(Collectors.joining("+"));
    }

    @Override
    public Optional<Block> next() throws IOException {
        if (at == frames) {
            return Optional.empty();
        }
        int count = (int) Math.min(BLOCK, frames - at);
        var all = new ArrayList<int[]>();
        for (var file : signalFiles) {
            all.addAll(List.of(file.next(count)));
        }
        var block = new Block(at * leads.perFrame(), leads.of(all));
        at += count;
        sum(all);
        return Optional.of(block);
    }

    private void sum(List<int[]> signals) {
        for (int i = 0; i < sums.length; i++) {
            int missing = wfdb.signals().get(i).format().missing();
            int sum = sums[i];
            for (int sample : signals.get(i)) {
                sum += sample == Block.MISSING ? missing : sample;
            }
            sums[i] = (short) sum;
        }
        if (at == frames && wfdb.frames() > 0) {
            compareSums();
        }
    }

    private void compareSums() {
        for (int i = 0; i < sums.length; i++) {
            OptionalInt expected = wfdb.signals().get(i).checksum();
            if (expected.isPresent() && (short) expected.getAsInt() != sums[i]) {
                notes.add(
                        "Signal " + (i + 1) + " does not have the checksum its WFDB header gives.");
            }
        }
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
        long end = frames * leads.perFrame();
        return annotations().map(marked -> marked.rhythms(end)).orElse(List.of());
    }

    private Optional<WfdbAnnotations> annotations() throws IOException {
        var name = wfdb.name() + ".atr";
        if (!files.names().contains(name)) {
            return Optional.empty();
        }
        try (var channel = files.open(name)) {
            return Optional.of(WfdbAnnotations.read(channel, wfdb.hz(), leads.perFrame()));
        }
    }

    @Override
    public void close() throws IOException {
        for (var file : signalFiles) {
            file.close();
        }
    }
}

package dev.isoline.ecg.wfdb;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.Faults;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/** A record of one segment: a header and one or more signal files. */
final class WfdbRecord implements WfdbFrames {

    /** Frames and samples of a block at most. */
    private static final int BLOCK = 16 * 1024;

    private static final int BLOCK_SAMPLES = 1 << 20;

    private final WfdbHeader wfdb;
    private final RecordingFiles files;
    private final Faults faults;
    private final String place;
    private final WfdbLeads leads;
    private final List<WfdbSignalFile> signalFiles = new ArrayList<>();
    private final long frames;
    private long at;

    WfdbRecord(WfdbHeader wfdb, RecordingFiles files, Faults faults) throws IOException {
        this(wfdb, files, faults, "");
    }

    /**
     * @param place of the record among others, for the faults: empty or {@code Segment 2: }
     */
    WfdbRecord(WfdbHeader wfdb, RecordingFiles files, Faults faults, String place)
            throws IOException {
        this.wfdb = wfdb;
        this.files = files;
        this.faults = faults;
        this.place = place;
        leads = new WfdbLeads(wfdb.signals(), faults);
        var groups = groups();
        frames = new WfdbLength(wfdb.frames(), files, faults, place).frames(groups);
        try {
            for (var group : groups.entrySet()) {
                open(group.getKey(), group.getValue());
            }
        } catch (IOException | RuntimeException e) {
            close();
            throw e;
        }
    }

    /** Signals of one file are interleaved in it. */
    private Map<String, List<WfdbSignal>> groups() throws RecordingException {
        var groups = new LinkedHashMap<String, List<WfdbSignal>>();
        String before = "";
        for (var signal : wfdb.signals()) {
            if (!signal.isNull()) {
                if (groups.containsKey(signal.file()) && !signal.file().equals(before)) {
                    throw new RecordingException(
                            place + "The signals of one WFDB signal file do not stand together.");
                }
                before = signal.file();
                groups.computeIfAbsent(before, file -> new ArrayList<>()).add(signal);
            }
        }
        return groups;
    }

    private void open(String file, List<WfdbSignal> signals) throws IOException {
        int skew = signals.stream().mapToInt(WfdbSignal::skew).max().orElse(0);
        long held = WfdbLength.framesIn(files.size(file), signals);
        signalFiles.add(
                new WfdbSignalFile(
                        signals, files.open(file), Math.min(held, frames + skew), frames));
    }

    @Override
    public List<Lead> leads() {
        return leads.leads();
    }

    @Override
    public int perFrame() {
        return leads.perFrame();
    }

    @Override
    public long frames() {
        return frames;
    }

    @Override
    public Optional<LocalDateTime> start() {
        return wfdb.start();
    }

    @Override
    public String formats() {
        return wfdb.signals().stream()
                .map(signal -> String.valueOf(signal.format().number()))
                .distinct()
                .collect(Collectors.joining("+"));
    }

    @Override
    public Optional<Block> next() throws IOException {
        long first = at;
        return nextOfAll().map(all -> new Block(first * leads.perFrame(), leads.of(all)));
    }

    /** Frames handed out so far. */
    long position() {
        return at;
    }

    /** The next samples of every signal of the header; a record without files is one gap. */
    Optional<List<int[]>> nextOfAll() throws IOException {
        if (at == frames || signalFiles.isEmpty()) {
            return Optional.empty();
        }
        int most = Math.max(1, BLOCK_SAMPLES / WfdbSignalFile.perFrame(wfdb.signals()));
        int count = (int) Math.min(Math.min(BLOCK, most), frames - at);
        var stored = new ArrayList<int[]>();
        for (var file : signalFiles) {
            stored.addAll(Arrays.asList(file.next(count)));
        }
        at += count;
        if (at == frames) {
            compareSums();
        }
        return Optional.of(withNull(stored, count));
    }

    /** Puts the signals that have no file between the others. */
    private List<int[]> withNull(List<int[]> stored, int count) {
        if (stored.size() == wfdb.signals().size()) {
            return stored;
        }
        var all = new ArrayList<int[]>();
        int file = 0;
        for (var signal : wfdb.signals()) {
            all.add(signal.isNull() ? missing(count * signal.perFrame()) : stored.get(file++));
        }
        return all;
    }

    static int[] missing(int count) {
        var samples = new int[count];
        Arrays.fill(samples, Block.MISSING);
        return samples;
    }

    /** Only of a record whose header says how long it is, and that has all of it. */
    private void compareSums() throws RecordingException {
        int number = 0;
        for (var file : signalFiles) {
            for (int i = 0; i < file.signals().size(); i++) {
                number++;
                OptionalInt expected = file.signals().get(i).checksum();
                if (wfdb.frames() == frames
                        && expected.isPresent()
                        && (short) expected.getAsInt() != file.sum(i)) {
                    differs(number, (short) expected.getAsInt());
                }
            }
        }
    }

    /** Of 0 nobody knows whether it is a checksum: it may only keep the place (header(5)). */
    private void differs(int signal, short expected) throws RecordingException {
        var sentence =
                place
                        + "Signal "
                        + signal
                        + " does not have the checksum its WFDB header gives, "
                        + expected
                        + ".";
        if (expected == 0) {
            faults.note(sentence);
        } else {
            faults.found(sentence);
        }
    }

    @Override
    public void close() throws IOException {
        for (var file : signalFiles) {
            file.close();
        }
    }
}

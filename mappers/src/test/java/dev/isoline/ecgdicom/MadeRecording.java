package dev.isoline.ecgdicom;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Block;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingHeader;
import java.time.LocalDateTime;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** A recording of given blocks. */
public final class MadeRecording implements Recording {

    public static final LocalDateTime START = LocalDateTime.of(2026, 10, 24, 9, 30, 15);

    private final RecordingHeader header;
    private final ArrayDeque<Block> blocks;
    private boolean marksMissing = true;

    public MadeRecording(double hz, List<Lead> leads, List<Block> blocks) {
        this(Optional.of(START), hz, leads, blocks);
    }

    public MadeRecording(
            Optional<LocalDateTime> start, double hz, List<Lead> leads, List<Block> blocks) {
        this.header =
                new RecordingHeader(
                        "made",
                        RecordingHeader.Identity.NONE,
                        start,
                        hz,
                        leads,
                        -1,
                        "Recorder 7",
                        List.of());
        this.blocks = new ArrayDeque<>(blocks);
    }

    /** Leads of one calibration and the given names. */
    public static List<Lead> leads(String... labels) {
        var leads = new ArrayList<Lead>();
        for (String label : labels) {
            leads.add(new Lead(label, 4.88281, 0, 16));
        }
        return leads;
    }

    /** A block of random 16-bit samples. */
    public static Block block(long first, int leads, int samples) {
        var random = new Random(first + samples);
        int[][] values = new int[leads][samples];
        for (int[] lead : values) {
            for (int i = 0; i < samples; i++) {
                lead[i] = random.nextInt(65_535) - 32_767;
            }
        }
        return new Block(first, values);
    }

    /** The same, of a format whose every number is a sample. */
    public MadeRecording withoutMissing() {
        marksMissing = false;
        return this;
    }

    @Override
    public boolean marksMissing() {
        return marksMissing;
    }

    @Override
    public RecordingHeader header() {
        return header;
    }

    @Override
    public Optional<Block> next() {
        return Optional.ofNullable(blocks.poll());
    }

    @Override
    public List<Beat> referenceBeats() {
        return List.of();
    }

    @Override
    public void close() {
        blocks.clear();
    }
}

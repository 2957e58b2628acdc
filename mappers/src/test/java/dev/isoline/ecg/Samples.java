package dev.isoline.ecg;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Reads recordings to the end. */
public final class Samples {

    private Samples() {}

    public static List<Block> blocks(Recording recording) throws IOException {
        var blocks = new ArrayList<Block>();
        for (var block = recording.next(); block.isPresent(); block = recording.next()) {
            blocks.add(block.get());
        }
        return blocks;
    }

    /** All samples of one lead, gaps closed. */
    public static int[] lead(Recording recording, int lead) throws IOException {
        return blocks(recording).stream()
                .flatMapToInt(block -> Arrays.stream(block.samples()[lead]))
                .toArray();
    }
}

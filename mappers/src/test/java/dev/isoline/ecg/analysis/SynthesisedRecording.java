package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Block;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingHeader;
import dev.isoline.synth.EcgPlan;
import dev.isoline.synth.Synthesiser;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/** What the synthesiser makes of a plan, without a file in between. */
final class SynthesisedRecording implements Recording {

    private static final int BLOCK = 1000;

    private final EcgPlan plan;
    private final Deque<Block> blocks = new ArrayDeque<>();
    private int[][] samples;
    private int filled;
    private long first;

    SynthesisedRecording(EcgPlan plan) throws IOException {
        this.plan = plan;
        begin();
        new Synthesiser(plan).writeTo(this::frame);
        cut();
    }

    private void begin() {
        samples = new int[plan.leads().size()][BLOCK];
        filled = 0;
    }

    private void frame(int[] frame) {
        for (int lead = 0; lead < frame.length; lead++) {
            samples[lead][filled] = frame[lead];
        }
        if (++filled == BLOCK) {
            cut();
        }
    }

    private void cut() {
        if (filled > 0) {
            Arrays.setAll(samples, lead -> Arrays.copyOf(samples[lead], filled));
            blocks.add(new Block(first, samples));
            first += filled;
            begin();
        }
    }

    @Override
    public RecordingHeader header() {
        double unit = 1000.0 / EcgPlan.UNITS_PER_MILLIVOLT;
        return new RecordingHeader(
                "synthesised",
                RecordingHeader.Identity.NONE,
                Optional.empty(),
                plan.hz(),
                plan.leads().stream().map(label -> new Lead(label, unit, 0, 12)).toList(),
                plan.samples(),
                "",
                List.of());
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

package dev.isoline.synth;

import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;

/**
 * Writes {@code NAME.dat} while the samples come and {@code NAME.hea}, which needs their checksums,
 * at the end (WFDB header(5), signal(5)).
 */
public final class WfdbWriter implements FrameSink, Closeable {

    private static final DateTimeFormatter BASE_TIME =
            DateTimeFormatter.ofPattern("HH:mm:ss dd/MM/yyyy");

    private final EcgPlan plan;
    private final WfdbSamples format;
    private final LocalDateTime start;
    private final Path folder;
    private final String name;
    private final OutputStream dat;
    private final int[] firstValues;
    private final int[] sums;
    private long frames;
    private Integer waiting;

    /**
     * @param name of the record: letters, digits, hyphen and underscore
     */
    public WfdbWriter(
            EcgPlan plan, WfdbSamples format, LocalDateTime start, Path folder, String name)
            throws IOException {
        this.plan = plan;
        this.format = format;
        this.start = start;
        this.folder = folder;
        this.name = name;
        this.firstValues = new int[plan.leads().size()];
        this.sums = new int[plan.leads().size()];
        this.dat = new BufferedOutputStream(Files.newOutputStream(folder.resolve(name + ".dat")));
    }

    @Override
    public void frame(int[] samples) throws IOException {
        for (int lead = 0; lead < samples.length; lead++) {
            if (frames == 0) {
                firstValues[lead] = samples[lead];
            }
            sums[lead] += samples[lead];
            write(samples[lead]);
        }
        frames++;
    }

    private void write(int sample) throws IOException {
        if (waiting == null) {
            waiting = sample;
            return;
        }
        format.pair(dat, waiting, sample);
        waiting = null;
    }

    /** An odd last sample is completed to a pair; the header says how many samples count. */
    @Override
    public void close() throws IOException {
        if (waiting != null) {
            write(0);
        }
        dat.close();
        Files.writeString(folder.resolve(name + ".hea"), header());
    }

    private String header() {
        var text = new StringBuilder();
        text.append(
                "%s %d %d %d %s\n"
                        .formatted(name, sums.length, plan.hz(), frames, BASE_TIME.format(start)));
        for (int lead = 0; lead < sums.length; lead++) {
            text.append(signal(lead));
        }
        return text.toString();
    }

    /** The checksum is the sum of all samples as a 16-bit signed number. */
    private String signal(int lead) {
        return "%s.dat %d %d/mV %d 0 %d %d 0 %s\n"
                .formatted(
                        name,
                        format.code(),
                        EcgPlan.UNITS_PER_MILLIVOLT,
                        format.bits(),
                        firstValues[lead],
                        (short) sums[lead],
                        plan.leads().get(lead));
    }
}

package dev.isoline.synth;

import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/**
 * Writes an uninterrupted recording as EDF+C (EDF+ specification, 2.1 and 2.2) with records of one
 * second, each with its time-keeping annotation; one record in memory.
 */
public final class EdfPlusWriter implements FrameSink, Closeable {

    private static final int ANNOTATION_BYTES = 32;

    private final EcgPlan plan;
    private final OutputStream out;
    private final int[][] record;
    private int filled;
    private int written;

    /**
     * @param out closed with this writer
     */
    public EdfPlusWriter(EcgPlan plan, EdfIdentity identity, OutputStream out) throws IOException {
        this.plan = plan;
        this.out = out;
        this.record = new int[plan.leads().size()][plan.hz()];
        new EdfHeader(plan, identity, ANNOTATION_BYTES).writeTo(out);
    }

    @Override
    public void frame(int[] samples) throws IOException {
        for (int lead = 0; lead < record.length; lead++) {
            record[lead][filled] = samples[lead];
        }
        if (++filled == plan.hz()) {
            writeRecord();
        }
    }

    private void writeRecord() throws IOException {
        for (int[] lead : record) {
            for (int sample : lead) {
                LittleEndian.word(out, sample);
            }
        }
        out.write(timeKeeping(written));
        written++;
        filled = 0;
    }

    /** {@code +onset 0x14 0x14 0x00}, the rest filled with zeros. */
    private static byte[] timeKeeping(int second) throws IOException {
        var text = new ByteArrayOutputStream();
        text.write(("+" + second + "\u0014\u0014\0").getBytes(StandardCharsets.UTF_8));
        text.write(new byte[ANNOTATION_BYTES - text.size()]);
        return text.toByteArray();
    }

    /**
     * @throws IllegalStateException when fewer frames came than the header promised
     */
    @Override
    public void close() throws IOException {
        out.close();
        if (written != plan.seconds()) {
            throw new IllegalStateException(
                    "EDF+ header promises " + plan.seconds() + " records, got " + written);
        }
    }
}

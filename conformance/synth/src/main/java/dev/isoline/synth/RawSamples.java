package dev.isoline.synth;

import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** Keeps the samples as plain 16-bit words, low byte first, leads interleaved. */
public final class RawSamples implements FrameSink, Closeable {

    private final OutputStream out;

    public RawSamples(Path file) throws IOException {
        this.out = new BufferedOutputStream(Files.newOutputStream(file));
    }

    @Override
    public void frame(int[] samples) throws IOException {
        for (int sample : samples) {
            LittleEndian.word(out, sample);
        }
    }

    @Override
    public void close() throws IOException {
        out.close();
    }
}

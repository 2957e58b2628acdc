package dev.isoline.ecg.edf;

import dev.isoline.ecg.ChannelBytes;
import dev.isoline.ecg.RecordingException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.ShortBuffer;
import java.nio.channels.ReadableByteChannel;

/** The data records of an EDF or BDF file, a window of them at a time. */
final class EdfRecords {

    /** Bytes that are read at a time, unless one data record has more. */
    private static final int WINDOW = 1 << 16;

    private final ReadableByteChannel channel;
    private final EdfHeader edf;
    private final long total;
    private final int recordBytes;
    private final int sampleBytes;
    private final ByteBuffer window;
    private final ShortBuffer words;
    private final short[] row;
    private long read;
    private int held;

    /**
     * @param channel at the first data record
     * @param total how many of them there are
     * @param longest samples of a signal in a data record that will be asked for
     */
    EdfRecords(ReadableByteChannel channel, EdfHeader edf, long total, int longest) {
        this.channel = channel;
        this.edf = edf;
        this.total = total;
        recordBytes = edf.recordBytes();
        sampleBytes = edf.version().sampleBytes();
        window =
                ByteBuffer.allocateDirect(recordBytes * Math.max(1, WINDOW / recordBytes))
                        .order(ByteOrder.LITTLE_ENDIAN);
        words = window.asShortBuffer();
        row = new short[longest];
    }

    /** Fills the window with the next data records; false when there are no more. */
    boolean readOn() throws IOException {
        held = (int) Math.min(window.capacity() / recordBytes, total - read);
        if (!ChannelBytes.fill(window.clear().limit(held * recordBytes), channel)) {
            throw new RecordingException(
                    EdfLength.missing(
                            edf.bytes() + total * recordBytes,
                            edf.bytes() + read * recordBytes + window.position()));
        }
        read += held;
        return held > 0;
    }

    /** Data records in the window. */
    int held() {
        return held;
    }

    /** A data record of the window, counted in the file and from 1. */
    long number(int record) {
        return read - held + record + 1;
    }

    /** What the data record of the window has of the signal, as it is stored. */
    ByteBuffer bytes(int record, EdfSignal signal) {
        return window.slice(
                record * recordBytes + sampleBytes * signal.offset(),
                sampleBytes * signal.samples());
    }

    /** The samples of the signal in a data record of the window. */
    void samples(int record, EdfSignal signal, int[] into, int at) {
        if (edf.version() == EdfVersion.BDF) {
            samples24(record * recordBytes + 3 * signal.offset(), signal.samples(), into, at);
            return;
        }
        words.get(record * recordBytes / 2 + signal.offset(), row, 0, signal.samples());
        for (int i = 0; i < signal.samples(); i++) {
            into[at + i] = row[i];
        }
    }

    /** Two's complement, the least significant byte first. */
    private void samples24(int from, int count, int[] into, int at) {
        for (int i = 0, b = from; i < count; i++, b += 3) {
            into[at + i] =
                    window.get(b) & 0xff
                            | (window.get(b + 1) & 0xff) << 8
                            | window.get(b + 2) << 16;
        }
    }
}

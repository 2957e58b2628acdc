package dev.isoline.ecg.wfdb;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.ChannelBytes;
import dev.isoline.ecg.RecordingException;
import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.ReadableByteChannel;
import java.util.Arrays;
import java.util.List;

/**
 * One signal file of a WFDB record: frames of its signals, interleaved. A window of frames is kept
 * that reaches as far ahead as the largest skew.
 */
final class WfdbSignalFile implements Closeable {

    private final List<WfdbSignal> signals;
    private final ReadableByteChannel channel;
    private final WfdbFormat format;
    private final int perFrame;
    private final int ahead;
    private final long frames;
    private final long summed;
    private final short[] sums;
    private ByteBuffer stored = ByteBuffer.allocateDirect(0);
    private int[] window = new int[0];
    private int held;
    private long read;

    /**
     * @param signals of this file, in the order of the header
     * @param frames to be read
     * @param summed frames that the checksums are of: those of the record, skew or not
     */
    WfdbSignalFile(List<WfdbSignal> signals, ReadableByteChannel channel, long frames, long summed)
            throws IOException {
        this.signals = signals;
        this.channel = channel;
        this.frames = frames;
        this.summed = summed;
        sums = new short[signals.size()];
        format = signals.get(0).format();
        perFrame = perFrame(signals);
        ahead = signals.stream().mapToInt(WfdbSignal::skew).max().orElse(0);
        ChannelBytes.skip(signals.get(0).offset(), channel);
    }

    static int perFrame(List<WfdbSignal> signals) {
        return signals.stream().mapToInt(WfdbSignal::perFrame).sum();
    }

    /**
     * The next frames of every signal, skew taken out.
     *
     * @return {@code [signal][count x samples per frame]}, {@link Block#MISSING} past the end
     */
    int[][] next(int count) throws IOException {
        extend(count + ahead);
        var samples = new int[signals.size()][];
        int offset = 0;
        for (int i = 0; i < samples.length; i++) {
            samples[i] = column(offset, signals.get(i), count);
            if (signals.get(i).skew() == 0 && signals.get(i).checksum().isPresent()) {
                sums[i] += sum(samples[i]);
            }
            offset += signals.get(i).perFrame();
        }
        int used = Math.min(count, held);
        held -= used;
        System.arraycopy(window, used * perFrame, window, 0, held * perFrame);
        return samples;
    }

    private int[] column(int offset, WfdbSignal signal, int count) {
        int step = signal.perFrame();
        int missing = format.missing();
        var column = new int[count * step];
        int there = Math.max(0, Math.min(count, held - signal.skew())) * step;
        for (int sample = 0; sample < step; sample++) {
            int at = signal.skew() * perFrame + offset + sample;
            for (int i = sample; i < there; i += step, at += perFrame) {
                column[i] = window[at] == missing ? Block.MISSING : window[at];
            }
        }
        Arrays.fill(column, there, column.length, Block.MISSING);
        return column;
    }

    /** Reads on until the window holds so many frames or the file ends. */
    private void extend(int wanted) throws IOException {
        int more = (int) Math.min(groups(Math.max(0, wanted - held)), frames - read);
        if (!ChannelBytes.fill(room((int) format.bytes((long) more * perFrame)), channel)) {
            throw new RecordingException(
                    "A signal file of the WFDB record ended while it was read.");
        }
        if (window.length < (held + more) * perFrame) {
            window = Arrays.copyOf(window, (held + more) * perFrame);
        }
        WfdbSamples.unpack(format, wholeGroups(), window, held * perFrame, more * perFrame);
        sum(held * perFrame, (int) Math.max(0, Math.min(more, summed - read)));
        held += more;
        read += more;
    }

    /** What was handed out of a signal without skew; its samples stand together there. */
    private short sum(int[] column) {
        int missing = format.missing();
        int sum = 0;
        for (int sample : column) {
            sum += sample == Block.MISSING ? missing : sample;
        }
        return (short) sum;
    }

    /** Skewed signals as they are stored (header(5)): what a skew passes over included. */
    private void sum(int from, int count) {
        int offset = from;
        for (int i = 0; i < sums.length; i++) {
            int slots = signals.get(i).perFrame();
            if (signals.get(i).skew() > 0 && signals.get(i).checksum().isPresent()) {
                sums[i] += sum(offset, slots, count);
            }
            offset += slots;
        }
    }

    private short sum(int from, int slots, int count) {
        int sum = 0;
        for (int slot = from; slot < from + slots; slot++) {
            for (int at = slot, end = slot + count * perFrame; at < end; at += perFrame) {
                sum += window[at];
            }
        }
        return (short) sum;
    }

    /** 16-bit sum of a signal's samples, as far as the file was read. */
    short sum(int signal) {
        return sums[signal];
    }

    List<WfdbSignal> signals() {
        return signals;
    }

    /** What was read, zeros behind it up to the end of a group. */
    private ByteBuffer wholeGroups() {
        int end = stored.position();
        stored.limit(stored.capacity());
        while (end % format.groupBytes() != 0) {
            stored.put(end++, (byte) 0);
        }
        return stored.position(0).limit(end);
    }

    /** Outside the heap: a channel would copy what it reads into an array once more. */
    private ByteBuffer room(int bytes) {
        if (stored.capacity() < bytes + format.groupBytes()) {
            stored =
                    ByteBuffer.allocateDirect(bytes + format.groupBytes())
                            .order(ByteOrder.LITTLE_ENDIAN);
        }
        return stored.clear().limit(bytes);
    }

    /** Packed formats: every reading but the last takes whole groups of samples. */
    private int groups(int frames) {
        return (frames + format.groupSamples() - 1) / format.groupSamples() * format.groupSamples();
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}

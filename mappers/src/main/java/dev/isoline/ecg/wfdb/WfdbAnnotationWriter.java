package dev.isoline.ecg.wfdb;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.RhythmEpisode;
import dev.isoline.ecg.Stretch;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.WritableByteChannel;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Writer of an annotation file in MIT format (annot(5) of the WFDB Applications Guide): beats by
 * class, rhythms, flutter. The clock stands in the first annotation, so that the times are right
 * whatever the frame rate of the record is.
 */
public final class WfdbAnnotationWriter {

    private static final int NOTE = 22;
    private static final int RHYTHM_CHANGE = 28;
    private static final int FLUTTER_BEGINS = 32;
    private static final int FLUTTER_ENDS = 33;
    private static final int SKIP = 59;
    private static final int AUX = 63;
    private static final int LONGEST_STEP = 0x3ff;
    private static final int LONGEST_TEXT = 255;

    /** An annotation between the beats. */
    private record Mark(long sample, int code, String text) {}

    private final WritableByteChannel channel;
    private final ByteBuffer buffer = ByteBuffer.allocate(8192).order(ByteOrder.LITTLE_ENDIAN);
    private long time;

    private WfdbAnnotationWriter(WritableByteChannel channel) {
        this.channel = channel;
    }

    /**
     * Writes one file; the channel stays open.
     *
     * @param hz samples a second of the time axis that beats, rhythms and flutter are on
     * @param beats in order of time
     */
    public static void write(
            WritableByteChannel channel,
            double hz,
            List<Beat> beats,
            List<RhythmEpisode> rhythms,
            List<Stretch> flutter)
            throws IOException {
        var writer = new WfdbAnnotationWriter(channel);
        String clock = BigDecimal.valueOf(hz).stripTrailingZeros().toPlainString();
        writer.put(new Mark(0, NOTE, WfdbAnnotations.RESOLUTION + clock));
        writer.put(beats, marks(rhythms, flutter));
        writer.end();
    }

    private static List<Mark> marks(List<RhythmEpisode> rhythms, List<Stretch> flutter) {
        var marks = new ArrayList<Mark>();
        for (var episode : rhythms) {
            marks.add(new Mark(episode.stretch().from(), RHYTHM_CHANGE, episode.rhythm().wfdb()));
        }
        for (var stretch : flutter) {
            marks.add(new Mark(stretch.from(), FLUTTER_BEGINS, ""));
            marks.add(new Mark(stretch.to(), FLUTTER_ENDS, ""));
        }
        marks.sort(Comparator.comparingLong(Mark::sample));
        return marks;
    }

    private void put(List<Beat> beats, List<Mark> marks) throws IOException {
        int mark = 0;
        for (Beat beat : beats) {
            while (mark < marks.size() && marks.get(mark).sample() <= beat.sample()) {
                put(marks.get(mark++));
            }
            put(beat.sample(), WfdbAnnotations.code(beat.kind()));
        }
        for (Mark left : marks.subList(mark, marks.size())) {
            put(left);
        }
    }

    private void put(Mark mark) throws IOException {
        put(mark.sample(), mark.code());
        if (!mark.text().isEmpty()) {
            var text = mark.text().getBytes(StandardCharsets.US_ASCII);
            int length = Math.min(text.length, LONGEST_TEXT);
            room(Short.BYTES + length + 1);
            word(AUX, length);
            buffer.put(text, 0, length);
            if (length % 2 == 1) {
                buffer.put((byte) 0);
            }
        }
    }

    private void put(long sample, int code) throws IOException {
        room(4 * Short.BYTES);
        long step = sample - time;
        if (step > LONGEST_STEP) {
            word(SKIP, 0);
            buffer.putShort((short) (step >> 16)).putShort((short) step);
            step = 0;
        }
        word(code, (int) step);
        time = sample;
    }

    private void word(int code, int step) {
        buffer.putShort((short) (code << 10 | step));
    }

    private void end() throws IOException {
        room(Short.BYTES);
        buffer.putShort((short) 0);
        flush();
    }

    private void room(int bytes) throws IOException {
        if (buffer.remaining() < bytes) {
            flush();
        }
    }

    private void flush() throws IOException {
        buffer.flip();
        while (buffer.hasRemaining()) {
            channel.write(buffer);
        }
        buffer.clear();
    }
}

package dev.isoline.ecg.ishne;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.BeatSeries;
import dev.isoline.ecg.ChannelBytes;
import dev.isoline.ecg.Faults;
import dev.isoline.ecg.RecordingException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.ReadableByteChannel;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * An ISHNE annotation file: the header of a recording, then the sample of the first beat, then four
 * bytes for each beat: label, label of the writer, samples since the annotation before. Readers
 * disagree whether the first sample is there at all or the beats begin at once; it is there unless
 * the bytes at its place are those of a beat and make a number no recording begins with.
 */
final class IshneAnnotations {

    private static final byte[] MAGIC = "ANN  1.0".getBytes(StandardCharsets.US_ASCII);
    private static final int ENTRY = 4;

    /** Longer than four minutes at any usual rate: no first beat is so late. */
    private static final long LATEST_FIRST = 1 << 16;

    // spotless:off
    private static final Map<Character, Optional<Beat.Kind>> LABELS = Map.of(
            'N', Optional.of(Beat.Kind.N),   // normal
            'B', Optional.of(Beat.Kind.N),   // bundle branch block
            'S', Optional.of(Beat.Kind.S),   // supraventricular ectopic
            'V', Optional.of(Beat.Kind.V),   // ventricular ectopic
            'P', Optional.of(Beat.Kind.Q),   // paced
            'C', Optional.empty(),           // calibration
            'X', Optional.empty(),           // artefact
            '!', Optional.empty());          // a longer time than an interval can say
    // spotless:on

    private final BeatSeries beats = new BeatSeries();
    private long time;

    private IshneAnnotations() {}

    /** Whether the channel is at the beginning of an annotation file. */
    static boolean begins(ReadableByteChannel channel) throws IOException {
        var start = ChannelBytes.upTo(MAGIC.length, channel);
        return start.equals(ByteBuffer.wrap(MAGIC));
    }

    /** Beats in time order; of a beat with an unknown label the class is not known. */
    static List<Beat> read(ReadableByteChannel channel, Faults faults) throws IOException {
        var header = IshneHeader.read(channel);
        if (header.computed() != header.checksum()) {
            faults.found("The ISHNE annotation file does not have the checksum it gives.");
        }
        var annotations = new IshneAnnotations();
        var first = ChannelBytes.upTo(ENTRY, channel);
        if (first.limit() == ENTRY) {
            annotations.first(first);
            annotations.rest(channel);
        }
        return annotations.beats;
    }

    private void first(ByteBuffer bytes) {
        long sample = bytes.getInt(0) & 0xffff_ffffL;
        if (sample >= LATEST_FIRST && LABELS.containsKey((char) bytes.get(0))) {
            take(bytes);
        } else {
            time = sample;
            beats.add(time, Beat.Kind.UNCLASSIFIED);
        }
    }

    private void rest(ReadableByteChannel channel) throws IOException {
        var window = ByteBuffer.allocate(ENTRY * 1024).order(ByteOrder.LITTLE_ENDIAN);
        boolean more = true;
        while (more) {
            more = ChannelBytes.fill(window.clear(), channel);
            window.flip();
            while (window.remaining() >= ENTRY) {
                take(window);
            }
            if (window.hasRemaining()) {
                throw new RecordingException(
                        "The ISHNE annotation file is truncated: "
                                + (ENTRY - window.remaining())
                                + " bytes are missing.");
            }
        }
    }

    private void take(ByteBuffer entry) {
        char label = (char) (entry.get() & 0xff);
        entry.get();
        time += entry.getShort() & 0xffff;
        LABELS.getOrDefault(label, Optional.of(Beat.Kind.UNCLASSIFIED))
                .ifPresent(kind -> beats.add(time, kind));
    }
}

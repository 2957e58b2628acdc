package dev.isoline.ecg.wfdb;

import static java.util.Map.entry;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.BeatSeries;
import dev.isoline.ecg.ChannelBytes;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.Rhythm;
import dev.isoline.ecg.RhythmEpisode;
import dev.isoline.ecg.Stretch;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.ReadableByteChannel;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reader of an annotation file in MIT format (annot(5) of the WFDB Applications Guide): 16-bit
 * words, annotation code in the upper 6 bits, samples since the annotation before in the lower 10.
 *
 * <p>Beat codes become the classes of ANSI/AAMI EC57 by the mapping customary for the MIT-BIH
 * database (Journal of Healthcare Engineering 2021, 8642576, table 1), with R-on-T premature
 * ventricular contraction as V. Rhythm, noise and all other codes, flutter waves included, are no
 * beats.
 */
public final class WfdbAnnotations {

    // spotless:off
    private static final Map<Integer, Beat.Kind> AAMI = Map.ofEntries(
            entry( 1, Beat.Kind.N),  // N  normal
            entry( 2, Beat.Kind.N),  // L  left bundle branch block
            entry( 3, Beat.Kind.N),  // R  right bundle branch block
            entry(25, Beat.Kind.N),  // B  bundle branch block, unspecified
            entry(34, Beat.Kind.N),  // e  atrial escape
            entry(11, Beat.Kind.N),  // j  nodal escape
            entry(35, Beat.Kind.N),  // n  supraventricular escape
            entry( 8, Beat.Kind.S),  // A  atrial premature
            entry( 4, Beat.Kind.S),  // a  aberrated atrial premature
            entry( 7, Beat.Kind.S),  // J  nodal premature
            entry( 9, Beat.Kind.S),  // S  premature or ectopic supraventricular
            entry( 5, Beat.Kind.V),  // V  premature ventricular contraction
            entry(10, Beat.Kind.V),  // E  ventricular escape
            entry(41, Beat.Kind.V),  // r  R-on-T premature ventricular contraction
            entry( 6, Beat.Kind.F),  // F  fusion of ventricular and normal
            entry(12, Beat.Kind.Q),  // /  paced
            entry(38, Beat.Kind.Q),  // f  fusion of paced and normal
            entry(13, Beat.Kind.Q)); // Q  unclassifiable
    // spotless:on

    private static final int NOTE = 22;
    private static final int SKIP = 59;
    private static final int NUM = 60;
    private static final int CHN = 62;
    private static final int AUX = 63;
    static final String RESOLUTION = "## time resolution: ";

    private static final int FLUTTER_BEGINS = 32;
    private static final int FLUTTER_ENDS = 33;
    private static final int RHYTHM_CHANGE = 28;

    private final ReadableByteChannel channel;
    private final double frameHz;
    private final int perFrame;
    private final ByteBuffer buffer = ByteBuffer.allocate(8192).order(ByteOrder.LITTLE_ENDIAN);
    private final BeatSeries beats = new BeatSeries();
    private final List<Stretch> flutter = new ArrayList<>();
    private final List<RhythmEpisode> rhythms = new ArrayList<>();
    private double scale;
    private long time;
    private long flutterFrom = -1;
    private Optional<Rhythm> rhythm = Optional.empty();
    private long rhythmFrom;

    private WfdbAnnotations(ReadableByteChannel channel, double frameHz, int perFrame) {
        this.channel = channel;
        this.frameHz = frameHz;
        this.perFrame = perFrame;
        scale = perFrame;
        buffer.limit(0);
    }

    /**
     * Reads to the end of the file.
     *
     * @param frameHz frames a second of the record, which the annotations count
     * @param perFrame samples of the leads in a frame
     * @throws RecordingException when the file ends within an annotation or goes back in time
     */
    public static WfdbAnnotations read(ReadableByteChannel channel, double frameHz, int perFrame)
            throws IOException {
        var annotations = new WfdbAnnotations(channel, frameHz, perFrame);
        int code = 0;
        while (annotations.filled(2)) {
            int word = annotations.buffer.getShort() & 0xffff;
            if (word == 0) {
                break;
            }
            annotations.take(word >> 10, word & 0x3ff, code);
            code = isQualifier(word >> 10) ? code : word >> 10;
        }
        return annotations;
    }

    /** The code a class is written as; Q, unclassifiable, for a beat nobody has classified. */
    static int code(Beat.Kind kind) {
        return switch (kind) {
            case N -> 1;
            case S -> 9;
            case V -> 5;
            case F -> 6;
            case Q, UNCLASSIFIED -> 13;
        };
    }

    /** NUM, SUB and CHN say more of the annotation before them. */
    private static boolean isQualifier(int code) {
        return code >= NUM && code <= CHN;
    }

    /** Beats in time order, on the time axis of the leads. */
    public List<Beat> beats() {
        return beats;
    }

    /** Ventricular flutter or fibrillation, {@code [} to {@code ]}: no single beats to be found. */
    public List<Stretch> flutter() {
        return flutter;
    }

    /** Each lasts to the next one; the last one to {@code end}, the length of the recording. */
    List<RhythmEpisode> rhythms(long end) {
        change(Optional.empty(), end);
        return rhythms;
    }

    private void take(int code, int step, int before) throws IOException {
        if (code == SKIP) {
            require(4);
            int high = buffer.getShort();
            time += high << 16 | buffer.getShort() & 0xffff;
        } else if (code == AUX) {
            aux(step, before);
        } else if (!isQualifier(code)) {
            time += step;
            mark(code, Math.round(time * scale));
        }
    }

    private void mark(int code, long sample) throws RecordingException {
        var kind = AAMI.get(code);
        if (kind != null) {
            if (sample < 0 || !beats.isEmpty() && sample < beats.sample(beats.size() - 1)) {
                throw new RecordingException("The WFDB annotations are not in order of time.");
            }
            beats.add(sample, kind);
        } else if (code == FLUTTER_BEGINS) {
            flutterFrom = sample;
        } else if (code == FLUTTER_ENDS && flutterFrom >= 0) {
            flutter.add(new Stretch(flutterFrom, sample));
            flutterFrom = -1;
        }
    }

    /** Text of an annotation, padded to whole words; a first note may give a finer clock. */
    private void aux(int length, int before) throws IOException {
        require(length + (length & 1));
        var text = new byte[length];
        buffer.get(text).position(buffer.position() + (length & 1));
        var note = new String(text, StandardCharsets.US_ASCII).replace("\0", "");
        if (before == NOTE && time == 0 && note.startsWith(RESOLUTION)) {
            clock(note.substring(RESOLUTION.length()).strip());
        } else if (before == RHYTHM_CHANGE) {
            change(Rhythm.ofWfdb(note.strip()), Math.round(time * scale));
        }
    }

    private void change(Optional<Rhythm> next, long at) {
        if (rhythm.isPresent() && at > rhythmFrom) {
            rhythms.add(new RhythmEpisode(new Stretch(rhythmFrom, at), rhythm.get()));
        }
        rhythm = next;
        rhythmFrom = at;
    }

    private void clock(String hz) throws RecordingException {
        double clock = 0;
        if (hz.matches("\\d{1,9}(\\.\\d{1,9})?")) {
            clock = Double.parseDouble(hz);
        }
        if (clock <= 0) {
            throw new RecordingException("The WFDB annotations give a clock that is no frequency.");
        }
        scale = frameHz * perFrame / clock;
    }

    private void require(int bytes) throws IOException {
        if (!filled(bytes)) {
            throw new RecordingException("The WFDB annotation file is truncated.");
        }
    }

    private boolean filled(int bytes) throws IOException {
        if (buffer.remaining() < bytes) {
            ChannelBytes.fill(buffer.compact(), channel);
            buffer.flip();
        }
        return buffer.remaining() >= bytes;
    }
}

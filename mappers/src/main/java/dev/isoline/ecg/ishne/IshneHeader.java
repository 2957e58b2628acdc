package dev.isoline.ecg.ishne;

import dev.isoline.ecg.ChannelBytes;
import dev.isoline.ecg.RecordingException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ReadableByteChannel;
import java.util.ArrayList;
import java.util.List;

/**
 * The fixed and the variable block of an ISHNE file, little-endian, at the offsets of the table in
 * the format's description.
 *
 * @param ecg whether it is a recording and not an annotation file
 * @param checksum stored, and {@code computed} over the bytes from 10 to the end of the block
 * @param samples as the header gives them: of a lead, by other writers of all leads
 * @param headerBytes of both blocks
 * @param dataOffset where the samples begin
 * @param sex 0 unknown, 1 male, 2 female
 * @param leads specification, and resolution in nanovolts, of each
 * @param pacemaker 0 none, 1 to 5 kinds of one
 */
record IshneHeader(
        boolean ecg,
        int checksum,
        int computed,
        long samples,
        long headerBytes,
        long dataOffset,
        String firstName,
        String lastName,
        String id,
        int sex,
        Triple birth,
        Triple recordDate,
        Triple startTime,
        List<Lead> leads,
        int pacemaker,
        String recorder,
        int hz) {

    /** A date as day, month, year; a time as hour, minute, second. */
    record Triple(int first, int second, int third) {}

    /** Specification code and nanovolts of one unit of a sample. */
    record Lead(int specification, int resolution) {}

    static final int MAGIC_BYTES = 8;
    private static final int CHECKED_FROM = 10;
    static final int FIXED = 522;
    private static final int MOST_LEADS = 12;
    private static final int LARGEST_VARIABLE = 16 << 20;

    /** Reads both blocks; the channel then stands behind them. */
    static IshneHeader read(ReadableByteChannel channel) throws IOException {
        var fixed = ChannelBytes.upTo(FIXED, channel);
        if (fixed.limit() < FIXED) {
            throw shortBy(FIXED - fixed.limit());
        }
        int length = fixed.getInt(10);
        if (length < 0 || length > LARGEST_VARIABLE) {
            throw new RecordingException(
                    "The ISHNE header gives its variable block an absurd length.");
        }
        var variable = ChannelBytes.upTo(length, channel);
        if (variable.limit() < length) {
            throw shortBy(length - variable.limit());
        }
        int computed = Crc.of(Crc.START, fixed.slice(CHECKED_FROM, FIXED - CHECKED_FROM), variable);
        return of(fixed, computed, FIXED + (long) length);
    }

    private static RecordingException shortBy(int missing) {
        return new RecordingException(
                "The ISHNE file is truncated within its header: "
                        + missing
                        + " bytes are missing.");
    }

    // spotless:off
    private static IshneHeader of(ByteBuffer b, int computed, long end) throws RecordingException {
        return new IshneHeader(
                b.get(0) == 'I',
                b.getShort(8) & 0xffff,
                computed,
                b.getInt(14),
                end,
                dataOffset(b.getInt(22), end),
                text(b, 28, 40),
                text(b, 68, 40),
                text(b, 108, 20),
                b.getShort(128),
                triple(b, 132),
                triple(b, 138),
                triple(b, 150),
                leads(b),
                b.getShort(230),
                text(b, 232, 40),
                b.getShort(272) & 0xffff);
    }
    // spotless:on

    /** Behind the variable block, unless the header names a place behind that. */
    private static long dataOffset(int named, long end) {
        return Math.max(named, end);
    }

    private static List<Lead> leads(ByteBuffer b) throws RecordingException {
        int count = b.getShort(156);
        if (count < 1 || count > MOST_LEADS) {
            throw new RecordingException(
                    "The ISHNE header announces " + count + " leads; 1 to 12 are read.");
        }
        var leads = new ArrayList<Lead>();
        for (int i = 0; i < count; i++) {
            leads.add(new Lead(b.getShort(158 + 2 * i), b.getShort(206 + 2 * i)));
        }
        return List.copyOf(leads);
    }

    private static Triple triple(ByteBuffer b, int at) {
        return new Triple(b.getShort(at), b.getShort(at + 2), b.getShort(at + 4));
    }

    /** Up to the first NUL. */
    private static String text(ByteBuffer b, int at, int width) {
        var text = new StringBuilder();
        for (int i = at; i < at + width && b.get(i) != 0; i++) {
            text.append((char) (b.get(i) & 0xff));
        }
        return text.toString().strip();
    }

    int frameBytes() {
        return leads.size() * Short.BYTES;
    }
}

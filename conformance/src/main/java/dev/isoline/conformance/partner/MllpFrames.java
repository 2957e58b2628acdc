package dev.isoline.conformance.partner;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.Optional;

/** MLLP release 1: start byte, message, end byte, carriage return (HL7 v2.5.1 App. C). */
final class MllpFrames {

    private static final int START = 0x0B;
    private static final int END = 0x1C;
    private static final int CARRIAGE_RETURN = 0x0D;

    private MllpFrames() {}

    /** In one write, so that the frame leaves in as few packets as it can. */
    static void write(OutputStream out, byte[] message) throws IOException {
        var frame = new ByteArrayOutputStream(message.length + 3);
        frame.write(START);
        frame.write(message);
        frame.write(END);
        frame.write(CARRIAGE_RETURN);
        out.write(frame.toByteArray());
        out.flush();
    }

    /** The next message; empty when the other side has closed between two frames. */
    static Optional<byte[]> read(InputStream in) throws IOException {
        int next = in.read();
        while (next != START && next >= 0) {
            next = in.read();
        }
        return next < 0 ? Optional.empty() : Optional.of(message(in));
    }

    private static byte[] message(InputStream in) throws IOException {
        var message = new ByteArrayOutputStream();
        for (int next = in.read(); next != END; next = in.read()) {
            if (next < 0) {
                throw new IOException("the connection ended within an MLLP frame");
            }
            message.write(next);
        }
        in.read();
        return message.toByteArray();
    }
}

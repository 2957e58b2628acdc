package dev.isoline.conformance.partner;

import java.io.Closeable;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.time.Duration;

/** A clinic's sending side: one connection, one message at a time, each waits for its answer. */
public final class ClinicMllp implements Closeable {

    private final Socket socket = new Socket();

    public ClinicMllp(int port, Duration answerWithin) throws IOException {
        socket.connect(new InetSocketAddress("127.0.0.1", port), (int) answerWithin.toMillis());
        socket.setSoTimeout((int) answerWithin.toMillis());
    }

    /**
     * @return the acknowledgement as it came
     * @throws IOException when none comes in time or the connection ends
     */
    public byte[] send(byte[] message) throws IOException {
        MllpFrames.write(socket.getOutputStream(), message);
        return MllpFrames.read(socket.getInputStream())
                .orElseThrow(() -> new IOException("the connection ended without an answer"));
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}

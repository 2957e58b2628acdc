package dev.isoline.mllp;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.time.Duration;

/**
 * Sends messages over one MLLP connection and waits for the answer to each (HL7 MLLP release 1).
 * Not for use by several threads at once. After an exception the connection is of no more use.
 */
public final class MllpClient implements AutoCloseable {

    private static final int LONGEST_ANSWER = 1 << 20;

    private final Socket socket;
    private final InputStream in;

    private MllpClient(Socket socket) throws IOException {
        this.socket = socket;
        this.in = new BufferedInputStream(socket.getInputStream());
    }

    /**
     * @param timeout for connecting and for each read
     */
    public static MllpClient connect(String host, int port, Duration timeout) throws IOException {
        var socket = new Socket();
        try {
            int millis = Math.toIntExact(timeout.toMillis());
            socket.setTcpNoDelay(true);
            socket.setSoTimeout(millis);
            socket.connect(new InetSocketAddress(host, port), millis);
            return new MllpClient(socket);
        } catch (IOException e) {
            socket.close();
            throw e;
        }
    }

    /**
     * Sends one message and returns the next frame that comes back, without its block characters.
     *
     * @throws java.net.SocketTimeoutException when no whole answer came in time
     * @throws EOFException when the partner closed the connection instead of answering
     */
    public byte[] send(byte[] message) throws IOException {
        socket.getOutputStream().write(Block.frame(message));
        socket.getOutputStream().flush();
        return receive();
    }

    private byte[] receive() throws IOException {
        while (read() != Block.START) {
            // bytes between frames mean nothing
        }
        var answer = new ByteArrayOutputStream();
        for (int b = read(); b != Block.END; b = read()) {
            answer.write(b);
            if (answer.size() > LONGEST_ANSWER) {
                throw new IOException("the answer is longer than " + LONGEST_ANSWER + " bytes");
            }
        }
        return answer.toByteArray();
    }

    private int read() throws IOException {
        int b = in.read();
        if (b < 0) {
            throw new EOFException("the partner closed the connection before a whole answer");
        }
        return b;
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}

package dev.isoline.gateway;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** One TCP connection seen as bytes, to send what a well-made MLLP client would not. */
final class Wire {

    private static final int VT = 0x0B;
    private static final int FS = 0x1C;
    private static final int ANSWER_MILLIS = 20_000;
    private static final int SILENCE_MILLIS = 150;

    private Wire() {}

    static byte[] frame(String message) {
        return frame(message.getBytes(StandardCharsets.UTF_8));
    }

    static byte[] frame(byte[] message) {
        var bytes = new ByteArrayOutputStream();
        bytes.write(VT);
        bytes.writeBytes(message);
        bytes.write(FS);
        bytes.write('\r');
        return bytes.toByteArray();
    }

    /** The frames that come back: those expected, and any that follow shortly after. */
    static List<String> exchange(int port, byte[] bytes, int expected) {
        try (var socket = new Socket("127.0.0.1", port)) {
            socket.getOutputStream().write(bytes);
            socket.getOutputStream().flush();
            var answers = new ArrayList<String>();
            String answer = next(socket, expected > 0);
            while (answer != null) {
                answers.add(answer);
                answer = next(socket, answers.size() < expected);
            }
            return answers;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** How many seconds the gateway leaves a connection open that says no more. */
    static double secondsUntilClosed(int port, byte[] bytes) {
        try (var socket = new Socket("127.0.0.1", port)) {
            socket.setSoTimeout(ANSWER_MILLIS);
            long start = System.nanoTime();
            socket.getOutputStream().write(bytes);
            socket.getOutputStream().flush();
            if (socket.getInputStream().read() >= 0) {
                throw new IllegalStateException("the gateway answered half a message");
            }
            return (System.nanoTime() - start) / 1e9;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Null when there is none. */
    private static String next(Socket socket, boolean expected) throws IOException {
        socket.setSoTimeout(expected ? ANSWER_MILLIS : SILENCE_MILLIS);
        InputStream in = socket.getInputStream();
        var answer = new ByteArrayOutputStream();
        try {
            for (int b = in.read(); b != FS; b = in.read()) {
                if (b < 0) {
                    return null;
                }
                if (b != VT) {
                    answer.write(b);
                }
            }
            in.read();
            return answer.toString(StandardCharsets.UTF_8);
        } catch (SocketTimeoutException e) {
            return null;
        }
    }
}

package dev.isoline.delivery;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;

/**
 * An MLLP listener (HL7 v2.5.1 appendix C) on loopback that answers as it is told; an empty answer
 * closes the connection instead.
 */
final class MllpPartner implements AutoCloseable {

    final List<String> messages = new CopyOnWriteArrayList<>();
    final AtomicInteger connections = new AtomicInteger();
    volatile Function<String, String> answers = MllpPartner::accepted;
    volatile boolean closesAfterAnswer;
    private final ServerSocket server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());

    MllpPartner() throws IOException {
        thread(this::listen);
    }

    static String accepted(String message) {
        return answer("AA", message.split("\\|")[9]);
    }

    static String answer(String code, String controlId) {
        return "MSH|^~\\&|B||A||20261125||ACK|1|P|2.5.1\rMSA|" + code + "|" + controlId + "\r";
    }

    int port() {
        return server.getLocalPort();
    }

    private void listen() {
        while (!server.isClosed()) {
            try {
                Socket socket = server.accept();
                connections.incrementAndGet();
                thread(() -> serve(socket));
            } catch (IOException e) {
                return;
            }
        }
    }

    private void serve(Socket socket) {
        try (socket) {
            InputStream in = socket.getInputStream();
            while (in.read() == 0x0b) {
                String message = message(in);
                messages.add(message);
                String answer = answers.apply(message);
                if (answer.isEmpty()) {
                    return;
                }
                byte[] frame = ("\u000b" + answer + "\u001c\r").getBytes(StandardCharsets.UTF_8);
                socket.getOutputStream().write(frame);
                if (closesAfterAnswer) {
                    return;
                }
            }
        } catch (IOException e) {
            // The other side went away.
        }
    }

    private static String message(InputStream in) throws IOException {
        var bytes = new ByteArrayOutputStream();
        for (int b = in.read(); b != 0x1c; b = in.read()) {
            bytes.write(b);
        }
        in.read();
        return bytes.toString(StandardCharsets.UTF_8);
    }

    private static void thread(Runnable task) {
        var thread = new Thread(task, "mllp-partner");
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void close() throws IOException {
        server.close();
    }
}

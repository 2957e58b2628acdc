package dev.isoline.conformance.partner;

import java.io.Closeable;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** A clinic's interface: takes status and result messages, answers each, keeps what came. */
public final class MllpListener implements Closeable {

    private final ServerSocket server;
    private final Set<Socket> connections = ConcurrentHashMap.newKeySet();
    private final Inbox<byte[]> inbox = new Inbox<>();

    public MllpListener() throws IOException {
        server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        start(this::accept);
    }

    public String url() {
        return "mllp://127.0.0.1:" + server.getLocalPort();
    }

    public Inbox<byte[]> inbox() {
        return inbox;
    }

    private void accept() {
        while (!server.isClosed()) {
            try {
                Socket connection = server.accept();
                connections.add(connection);
                start(() -> serve(connection));
            } catch (IOException e) {
                return; // closed
            }
        }
    }

    private void serve(Socket connection) {
        try (connection) {
            Optional<byte[]> message = MllpFrames.read(connection.getInputStream());
            while (message.isPresent()) {
                inbox.add(message.get());
                MllpFrames.write(
                        connection.getOutputStream(), Acknowledgement.accept(message.get()));
                message = MllpFrames.read(connection.getInputStream());
            }
        } catch (IOException e) {
            // the other side sees its own end of it
        } finally {
            connections.remove(connection);
        }
    }

    private static void start(Runnable work) {
        var thread = new Thread(work, "clinic-mllp");
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void close() throws IOException {
        server.close();
        for (Socket connection : connections) {
            connection.close();
        }
    }
}

package dev.isoline.dicom.peer;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assertions;

/** A server of others, running as long as it is open. */
public final class PeerProcess implements AutoCloseable {

    private static final int TRIES = 400;

    private final Process process;
    private final Path log;

    private PeerProcess(Process process, Path log) {
        this.process = process;
        this.log = log;
    }

    /** Starts it and returns when it answers on the port. */
    public static PeerProcess start(Path folder, int port, List<String> command)
            throws IOException {
        Checker.aloneInTheNetwork();
        Path log = folder.resolve("log.txt");
        Process process =
                new ProcessBuilder(command)
                        .directory(folder.toFile())
                        .redirectErrorStream(true)
                        .redirectOutput(log.toFile())
                        .start();
        var peer = new PeerProcess(process, log);
        peer.awaitPort(port);
        return peer;
    }

    /** A port nobody listens on; in the namespace of peer tests nobody else takes it. */
    public static int freePort() throws IOException {
        try (var socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }

    private void awaitPort(int port) throws IOException {
        for (int i = 0; i < TRIES && process.isAlive(); i++) {
            try (var socket = new Socket()) {
                socket.connect(new InetSocketAddress("127.0.0.1", port), 500);
                return;
            } catch (IOException notYet) {
                pause();
            }
        }
        close();
        Assertions.fail("the peer does not answer: " + log());
    }

    private static void pause() {
        try {
            Thread.sleep(25);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** What it has written so far. */
    public String log() throws IOException {
        return Files.readString(log, StandardCharsets.ISO_8859_1);
    }

    @Override
    public void close() {
        process.destroy();
        try {
            if (!process.waitFor(5, TimeUnit.SECONDS)) {
                process.destroyForcibly().waitFor();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}

package dev.isoline.ledger;

import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A PostgreSQL server of the tests' own, from the distribution's package, on a temporary folder and
 * a free loopback port, with fsync on. It refuses to run as root, hence the user {@code postgres}.
 */
public final class PostgresServer {

    private static final Path BIN = Path.of("/usr/lib/postgresql/15/bin");
    private static final AtomicInteger DATABASES = new AtomicInteger();
    private static PostgresServer running;

    private final Path folder;
    private final int port;

    private PostgresServer(Path folder, int port) {
        this.folder = folder;
        this.port = port;
    }

    /** JDBC URL of an empty database; skips the test when the server is not installed. */
    public static String newDatabase() throws Exception {
        if (!Files.isExecutable(BIN.resolve("initdb"))) {
            absent();
        }
        String name = "isoline" + DATABASES.incrementAndGet();
        String url = "jdbc:postgresql://127.0.0.1:" + running().port + "/";
        try (var connection = DriverManager.getConnection(url + "postgres", "postgres", "");
                var statement = connection.createStatement()) {
            statement.execute("CREATE DATABASE " + name);
        } catch (SQLException e) {
            throw new IllegalStateException("The test's PostgreSQL does not answer.", e);
        }
        return url + name;
    }

    private static void absent() {
        String message = "PostgreSQL 15 (Debian package postgresql) is not installed";
        if ("required"
                .equals(
                        System.getProperty(
                                "ISOLINE_CHECKERS", System.getenv("ISOLINE_CHECKERS")))) {
            fail(message);
        }
        abort(message);
    }

    private static synchronized PostgresServer running() throws Exception {
        if (running == null) {
            running = start();
        }
        return running;
    }

    private static PostgresServer start() throws Exception {
        Path folder = Files.createTempDirectory("isoline-postgres");
        if (isRoot()) {
            var users = folder.getFileSystem().getUserPrincipalLookupService();
            Files.setOwner(folder, users.lookupPrincipalByName("postgres"));
        }
        var server = new PostgresServer(folder, freePort());
        server.run("initdb", "-D", server.data(), "-U", "postgres", "--auth=trust", "-E", "UTF8");
        Runtime.getRuntime().addShutdownHook(new Thread(server::stop));
        String options =
                "-p %d -c listen_addresses=127.0.0.1 -c unix_socket_directories= -c fsync=on"
                        .formatted(server.port);
        server.run("pg_ctl", "-D", server.data(), "-o", options, "-w", "start");
        return server;
    }

    private void stop() {
        try {
            run("pg_ctl", "-D", data(), "-m", "immediate", "-w", "stop");
            run("rm", "-rf", data(), folder.resolve("log").toString());
            Files.delete(folder);
        } catch (IOException | InterruptedException e) {
            System.err.println("The test's PostgreSQL in " + folder + " was not cleaned up.");
        }
    }

    private String data() {
        return folder.resolve("data").toString();
    }

    private void run(String program, String... arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        if (isRoot()) {
            command.addAll(List.of("runuser", "-u", "postgres", "--"));
        }
        Path own = BIN.resolve(program);
        command.add(Files.exists(own) ? own.toString() : program);
        command.addAll(List.of(arguments));
        Process process =
                new ProcessBuilder(command)
                        .directory(folder.toFile())
                        .redirectErrorStream(true)
                        .redirectOutput(
                                ProcessBuilder.Redirect.appendTo(folder.resolve("log").toFile()))
                        .start();
        if (!process.waitFor(60, TimeUnit.SECONDS) || process.exitValue() != 0) {
            throw new IOException(program + " failed, see " + folder.resolve("log"));
        }
    }

    private static boolean isRoot() {
        return "root".equals(System.getProperty("user.name"));
    }

    private static int freePort() throws IOException {
        try (var socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }
}

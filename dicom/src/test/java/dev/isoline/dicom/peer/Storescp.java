package dev.isoline.dicom.peer;

import dev.isoline.dicom.spi.AeTitle;
import dev.isoline.dicom.spi.Remote;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** DCMTK's storescp, which keeps what it is sent in a folder. */
public final class Storescp implements AutoCloseable {

    private final PeerProcess process;
    private final Path folder;
    private final int port;

    private Storescp(PeerProcess process, Path folder, int port) {
        this.process = process;
        this.folder = folder;
        this.port = port;
    }

    /**
     * @param options of its command line, such as {@code +xi} or {@code -pdu 4096}
     */
    public static Storescp start(Path folder, Object... options) throws IOException {
        var verbose = new ArrayList<Object>(List.of("-v"));
        verbose.addAll(List.of(options));
        return quiet(folder, verbose.toArray());
    }

    /** One that does not say what it does, which takes it a while for each PDU. */
    public static Storescp quiet(Path folder, Object... options) throws IOException {
        int port = PeerProcess.freePort();
        var command = new ArrayList<>(List.of(Checker.program("storescp", "dcmtk")));
        for (Object option : options) {
            command.add(option.toString());
        }
        command.add(Integer.toString(port));
        return new Storescp(PeerProcess.start(folder, port, command), folder, port);
    }

    public int port() {
        return port;
    }

    /** How to reach it. */
    public Remote remote() {
        return Remote.of("127.0.0.1", port, new AeTitle("STORESCP"), new AeTitle("ISOLINE"));
    }

    /** The files it has written. */
    public List<Path> files() throws IOException {
        try (var files = Files.list(folder)) {
            return files.filter(f -> !f.endsWith("log.txt")).sorted().toList();
        }
    }

    public String log() throws IOException {
        return process.log();
    }

    @Override
    public void close() {
        process.close();
    }
}

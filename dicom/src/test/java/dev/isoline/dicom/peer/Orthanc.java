package dev.isoline.dicom.peer;

import dev.isoline.dicom.spi.AeTitle;
import dev.isoline.dicom.spi.Remote;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;

/** Orthanc as archive: DICOM on one port, its REST interface on another, storage in a folder. */
public final class Orthanc implements AutoCloseable {

    private static final HttpClient HTTP = HttpClient.newHttpClient();

    private final PeerProcess process;
    private final int dicomPort;
    private final int httpPort;

    private Orthanc(PeerProcess process, int dicomPort, int httpPort) {
        this.process = process;
        this.dicomPort = dicomPort;
        this.httpPort = httpPort;
    }

    /**
     * Starts it.
     *
     * @param caller the AE title it knows, and reports results of storage commitment to
     * @param port where that one listens
     */
    public static Orthanc start(Path folder, AeTitle caller, int port) throws IOException {
        int dicomPort = PeerProcess.freePort();
        int httpPort = PeerProcess.freePort();
        Path configuration = folder.resolve("orthanc.json");
        Files.writeString(
                configuration,
                """
                {"Name": "Tern Archive", "DicomAet": "ORTHANC", "DicomPort": %d, "HttpPort": %d,
                 "StorageDirectory": "%s", "IndexDirectory": "%s", "Plugins": [],
                 "RemoteAccessAllowed": false, "AuthenticationEnabled": false,
                 "DicomModalities": {"caller": ["%s", "127.0.0.1", %d]}}
                """
                        .formatted(
                                dicomPort,
                                httpPort,
                                folder.resolve("storage"),
                                folder.resolve("storage"),
                                caller,
                                port));
        var command =
                List.of(
                        Checker.program("Orthanc", "orthanc"),
                        "--verbose",
                        configuration.toString());
        return new Orthanc(PeerProcess.start(folder, dicomPort, command), dicomPort, httpPort);
    }

    /** How its known caller reaches it. */
    public Remote remote(AeTitle caller) {
        return Remote.of("127.0.0.1", dicomPort, new AeTitle("ORTHANC"), caller);
    }

    /** Base of its REST interface, and with the plugin of that name of DICOMweb. */
    public URI rest() {
        return URI.create("http://127.0.0.1:" + httpPort + "/");
    }

    /** Its own identifiers of the instances it holds. */
    public List<String> instances() throws IOException {
        String list = new String(get("instances"), java.nio.charset.StandardCharsets.UTF_8);
        return Pattern.compile("[0-9a-f-]{44}")
                .matcher(list)
                .results()
                .map(r -> r.group())
                .toList();
    }

    /** The Part 10 file of an instance. */
    public byte[] file(String instance) throws IOException {
        return get("instances/" + instance + "/file");
    }

    private byte[] get(String path) throws IOException {
        try {
            return HTTP.send(
                            HttpRequest.newBuilder(rest().resolve(path)).build(),
                            HttpResponse.BodyHandlers.ofByteArray())
                    .body();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
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

package dev.isoline.peers;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.isoline.dicom.peer.Checker;
import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;

/** Orthanc, an archive we did not write, with its DICOMweb plugin, on free ports. */
public final class Orthanc implements AutoCloseable {

    public static final String AE_TITLE = "ORTHANC";
    public static final String USER = "tester";
    public static final String PASSWORD = "tester-word";

    private static final String PLUGIN = "/usr/share/orthanc/plugins/libOrthancDicomWeb.so";
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Duration PATIENCE = Duration.ofSeconds(30);

    private final HttpClient client = HttpClient.newHttpClient();
    private final Process process;
    private final int http;
    private final int dimse;

    private Orthanc(Process process, int http, int dimse) {
        this.process = process;
        this.http = http;
        this.dimse = dimse;
    }

    public static Orthanc start(Path folder) throws IOException, InterruptedException {
        return start(folder, Map.of());
    }

    /**
     * @param more settings of its configuration file
     */
    public static Orthanc start(Path folder, Map<String, Object> more)
            throws IOException, InterruptedException {
        Checker.aloneInTheNetwork();
        Files.createDirectories(folder);
        int http = freePort();
        int dimse = freePort();
        var settings = new TreeMap<String, Object>(settings(folder, http, dimse));
        settings.putAll(more);
        Path file = folder.resolve("orthanc.json");
        Files.write(file, JSON.writeValueAsBytes(settings));
        var process =
                new ProcessBuilder(Checker.program("Orthanc", "orthanc"), file.toString())
                        .redirectErrorStream(true)
                        .redirectOutput(folder.resolve("log").toFile())
                        .start();
        var orthanc = new Orthanc(process, http, dimse);
        orthanc.awaitReadiness();
        return orthanc;
    }

    private static Map<String, Object> settings(Path folder, int http, int dimse) {
        return Map.ofEntries(
                Map.entry("Name", "archive"),
                Map.entry("StorageDirectory", folder.resolve("store").toString()),
                Map.entry("IndexDirectory", folder.resolve("store").toString()),
                Map.entry("HttpPort", http),
                Map.entry("DicomPort", dimse),
                Map.entry("DicomAet", AE_TITLE),
                Map.entry("DicomCheckCalledAet", true),
                Map.entry("RemoteAccessAllowed", false),
                Map.entry("AuthenticationEnabled", true),
                Map.entry("RegisteredUsers", Map.of(USER, PASSWORD)),
                Map.entry("Plugins", List.of(PLUGIN)),
                Map.entry("DicomWeb", Map.of("Enable", true, "Root", "/dicom-web/")));
    }

    /** Settings of an Orthanc that reports to an application entity on loopback. */
    public static Map<String, Object> knows(String title, int port) {
        return Map.of("DicomModalities", Map.of("peer", List.of(title, "127.0.0.1", port)));
    }

    public String http() {
        return "http://127.0.0.1:" + http;
    }

    public int dimsePort() {
        return dimse;
    }

    /** SOP Instance UIDs of what it holds. */
    public List<String> instances() throws IOException, InterruptedException {
        var uids = new ArrayList<String>();
        for (JsonNode id : JSON.readTree(get("/instances"))) {
            uids.add(
                    JSON.readTree(get("/instances/" + id.asText()))
                            .path("MainDicomTags")
                            .path("SOPInstanceUID")
                            .asText());
        }
        return uids;
    }

    /** The file it keeps of an instance. */
    public byte[] file(String sopInstance) throws IOException, InterruptedException {
        for (JsonNode id : JSON.readTree(get("/instances"))) {
            byte[] found = get("/instances/" + id.asText());
            if (new String(found, StandardCharsets.UTF_8).contains('"' + sopInstance + '"')) {
                return get("/instances/" + id.asText() + "/file");
            }
        }
        throw new IOException("Orthanc does not hold " + sopInstance);
    }

    private void awaitReadiness() throws InterruptedException, IOException {
        Instant end = Instant.now().plus(PATIENCE);
        while (true) {
            try {
                get("/system");
                return;
            } catch (IOException e) {
                if (!process.isAlive() || Instant.now().isAfter(end)) {
                    close();
                    throw new IOException("Orthanc did not start", e);
                }
                Thread.sleep(100);
            }
        }
    }

    private byte[] get(String path) throws IOException, InterruptedException {
        String pair = USER + ":" + PASSWORD;
        var request =
                HttpRequest.newBuilder(URI.create(http() + path))
                        .timeout(PATIENCE)
                        .header(
                                "Authorization",
                                "Basic " + Base64.getEncoder().encodeToString(pair.getBytes()))
                        .build();
        HttpResponse<byte[]> response = client.send(request, BodyHandlers.ofByteArray());
        if (response.statusCode() != 200) {
            throw new IOException("Orthanc answered HTTP " + response.statusCode());
        }
        return response.body();
    }

    private static int freePort() throws IOException {
        try (var socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    @Override
    public void close() throws InterruptedException {
        process.destroy();
        if (!process.waitFor(10, TimeUnit.SECONDS)) {
            process.destroyForcibly();
        }
    }
}

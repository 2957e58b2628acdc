package dev.isoline.conformance.partner;

import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** The place where recorders are read out: uploads a recording or drops it into a folder. */
public final class RecorderStation {

    private final GatewayHttp http;

    public RecorderStation(String base, String user, String token) {
        this.http = new GatewayHttp(base, user, token);
    }

    /** Streams the file; the file itself names its order. */
    public Reply upload(Path recording) throws IOException, InterruptedException {
        return http.post(
                "/recordings", "application/octet-stream", BodyPublishers.ofFile(recording));
    }

    public Reply state(String id) throws IOException, InterruptedException {
        return http.get("/recordings/" + id);
    }

    /** Appears in the folder whole: written under another name, then renamed. */
    public static void drop(Path recording, Path folder) throws IOException {
        String name = recording.getFileName().toString();
        Path part = folder.resolve("." + name + ".part");
        Files.copy(recording, part, StandardCopyOption.REPLACE_EXISTING);
        Files.move(part, folder.resolve(name), StandardCopyOption.ATOMIC_MOVE);
    }
}

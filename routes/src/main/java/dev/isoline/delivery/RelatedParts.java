package dev.isoline.delivery;

import java.io.ByteArrayInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.io.UncheckedIOException;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A {@code multipart/related} body of one part (RFC 2387, PS3.18 8.7.3.5.1), streamed from a file.
 */
final class RelatedParts {

    private final String type;
    private final Path file;
    private final String boundary = UUID.randomUUID().toString();
    private final AtomicLong sent = new AtomicLong();

    /**
     * @param type media type of the part
     */
    RelatedParts(String type, Path file) {
        this.type = type;
        this.file = file;
    }

    String contentType() {
        return "multipart/related; type=\"" + type + "\"; boundary=" + boundary;
    }

    /** Of a known length, so that the request carries Content-Length. */
    BodyPublisher body() throws IOException {
        return BodyPublishers.fromPublisher(
                BodyPublishers.ofInputStream(this::open),
                head().length + Files.size(file) + tail().length);
    }

    /** Bytes taken from the body so far. */
    long sent() {
        return sent.get();
    }

    private InputStream open() {
        try {
            return new Counted(
                    new SequenceInputStream(
                            Collections.enumeration(
                                    List.of(
                                            new ByteArrayInputStream(head()),
                                            Files.newInputStream(file),
                                            new ByteArrayInputStream(tail())))));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private byte[] head() {
        return ascii("--" + boundary + "\r\nContent-Type: " + type + "\r\n\r\n");
    }

    private byte[] tail() {
        return ascii("\r\n--" + boundary + "--\r\n");
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    private final class Counted extends FilterInputStream {

        Counted(InputStream stream) {
            super(stream);
        }

        @Override
        public int read(byte[] bytes, int from, int length) throws IOException {
            int count = super.read(bytes, from, length);
            sent.addAndGet(Math.max(count, 0));
            return count;
        }
    }
}

package dev.isoline.dicom.spi;

import java.time.Duration;

/**
 * How long to wait for what; zero for no limit.
 *
 * @param connect the TCP connection and the TLS handshake
 * @param artim Association Request/Reject/Release Timer, PS3.8 9.1.5: for the A-ASSOCIATE-RQ after
 *     the connection, and for the peer to close it at the end
 * @param associate the answer to our A-ASSOCIATE-RQ
 * @param response the next sign of life of a peer that owes us a response or the rest of a message
 * @param idle the next request on an association nothing happens on
 * @param release the answer to our A-RELEASE-RQ
 */
public record Timeouts(
        Duration connect,
        Duration artim,
        Duration associate,
        Duration response,
        Duration idle,
        Duration release) {

    public static final Timeouts DEFAULT = seconds(10, 30, 30, 120, 300, 10);

    /** All of them in seconds, in their order. */
    public static Timeouts seconds(
            int connect, int artim, int associate, int response, int idle, int release) {
        return new Timeouts(
                Duration.ofSeconds(connect),
                Duration.ofSeconds(artim),
                Duration.ofSeconds(associate),
                Duration.ofSeconds(response),
                Duration.ofSeconds(idle),
                Duration.ofSeconds(release));
    }
}

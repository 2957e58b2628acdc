package dev.isoline.delivery;

import dev.isoline.ledger.DeliveryTable.NewDelivery;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import javax.net.ssl.SSLContext;

/**
 * Stores objects by STOW-RS (PS3.18 10.5): one request an object, so that one that is refused holds
 * up no other, streamed from its file.
 */
public final class StowDestination implements Destination {

    private static final int PARALLEL = 2;

    private final URI studies;
    private final HttpPeer server;
    private final Path dataDir;

    /**
     * @param base of the DICOMweb service; {@code /studies} is appended
     * @param authorization value of the Authorization header; empty: none
     * @param timeout for connecting, and for a silence while nothing is being sent
     * @param tls empty: what the JDK trusts
     * @param dataDir what the paths of deliveries are relative to
     */
    public StowDestination(
            URI base,
            String authorization,
            Duration timeout,
            Optional<SSLContext> tls,
            Path dataDir) {
        this.studies = URI.create(base.toString().replaceFirst("/$", "") + "/studies");
        this.server = new HttpPeer(authorization, timeout, tls);
        this.dataDir = dataDir;
    }

    @Override
    public int parallel() {
        return PARALLEL;
    }

    @Override
    public Verdict send(NewDelivery delivery) throws IOException, InterruptedException {
        return ObjectFile.send(delivery, dataDir, this::store);
    }

    private Verdict store(ObjectFile object) throws IOException, InterruptedException {
        var parts = new RelatedParts("application/dicom", object.path());
        var response =
                server.post(
                        studies,
                        parts.contentType(),
                        "application/dicom+json",
                        parts.body(),
                        parts::sent);
        return StoreInstancesResponse.judge(
                response.statusCode(), response.body(), object.sopInstance());
    }
}

package dev.isoline.delivery;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.delivery.Verdict.Outcome;
import dev.isoline.ledger.DeliveryTable.NewDelivery;
import dev.isoline.peers.Orthanc;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** STOW-RS into Orthanc's DICOMweb plugin, an implementation of PS3.18 we did not write. */
@Tag("peer")
class OrthancStowPeerTest {

    @TempDir static Path data;

    @Test
    void what_orthanc_stored_is_delivered_and_what_it_passed_over_is_not() throws Exception {
        byte[] object = Objects.write(data.resolve("o.dcm"), "2.999.7", 3_000_000);
        Objects.writeOf("", data.resolve("bare.dcm"), "2.999.8", 10);
        try (var orthanc = Orthanc.start(data.resolve("orthanc"))) {
            assertThat(send(orthanc, "o.dcm").outcome()).isEqualTo(Outcome.DELIVERED);
            assertThat(orthanc.instances()).containsExactly("2.999.7");
            assertThat(orthanc.file("2.999.7")).hasSameSizeAs(object);

            Verdict again = send(orthanc, "o.dcm");
            assertThat(again.outcome()).isEqualTo(Outcome.DELIVERED);
            assertThat(send(orthanc, "bare.dcm").outcome()).isEqualTo(Outcome.RETRY);
            assertThat(orthanc.instances()).containsExactly("2.999.7");
        }
    }

    private static Verdict send(Orthanc orthanc, String path) throws Exception {
        var destination =
                new StowDestination(
                        URI.create(orthanc.http() + "/dicom-web"),
                        FhirDestination.basic(Orthanc.USER + ":" + Orthanc.PASSWORD),
                        Duration.ofSeconds(20),
                        Optional.empty(),
                        data);
        return destination.send(
                new NewDelivery(
                        "x", "o", "object", "application/dicom", null, path, Instant.EPOCH));
    }
}

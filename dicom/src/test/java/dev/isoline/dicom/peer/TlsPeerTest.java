package dev.isoline.dicom.peer;

import static dev.isoline.dicom.dimse.Loopback.AMBULATORY_ECG;
import static dev.isoline.dicom.dimse.Loopback.ENGINE;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.dicom.Part10;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.dimse.Loopback;
import dev.isoline.dicom.spi.AssociationObserver;
import dev.isoline.dicom.spi.Listener;
import dev.isoline.dicom.spi.Offer;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.Status;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.GeneralSecurityException;
import java.util.List;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import javax.net.ssl.SSLException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** TLS of BCP 195 with DCMTK, PS3.15 B.9; both sides show a certificate. */
@Tag("peer")
@Timeout(120)
class TlsPeerTest {

    @TempDir static Path folder;

    private static Certificates gateway;
    private static Certificates partner;
    private static Certificates stranger;
    private static Path file;

    @BeforeAll
    static void make() throws IOException {
        gateway = Certificates.of(folder, "gateway");
        partner = Certificates.of(folder, "partner");
        stranger = Certificates.of(folder, "stranger");
        file = folder.resolve("object.dcm");
        try (var channel =
                FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            var object = Loopback.object(folder, 2_000_000);
            Part10.write(channel, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN, object);
        }
    }

    private static Object[] dcmtk(Certificates own, Certificates trusted) {
        return new Object[] {"+tls", own.key(), own.certificate(), "+cf", trusted.certificate()};
    }

    @Test
    void storescp_is_sent_to_over_tls() throws IOException, GeneralSecurityException {
        Path kept = Files.createDirectories(folder.resolve("kept"));
        try (var storescp = Storescp.start(kept, dcmtk(partner, gateway))) {
            var remote = storescp.remote().with(gateway.trusting(partner));
            try (var association =
                    ENGINE.associate(remote, Offer.storage(List.of(AMBULATORY_ECG)))) {
                assertThat(association.peer().certificate()).contains("CN=partner");
                assertThat(association.store(file)).isEqualTo(Status.SUCCESS);
            }
            assertThat(storescp.files()).hasSize(1);
        }
    }

    @Test
    void a_server_with_a_wrong_certificate_is_not_spoken_to() throws Exception {
        Path kept = Files.createDirectories(folder.resolve("wrong"));
        try (var storescp = Storescp.start(kept, dcmtk(stranger, gateway))) {
            var remote = storescp.remote().with(gateway.trusting(partner));
            assertThatThrownBy(() -> ENGINE.associate(remote, Offer.verification()))
                    .isInstanceOf(SSLException.class);
        }
    }

    @Test
    void storescu_and_echoscu_are_served_over_tls_and_others_are_not() throws Exception {
        var accepted = new LinkedBlockingQueue<Peer>();
        var observer =
                new AssociationObserver() {
                    @Override
                    public void accepted(Peer peer) {
                        accepted.add(peer);
                    }
                };
        var kept = new Loopback.Folder(folder.resolve("received"));
        var services =
                Services.echoing().storing(List.of(AMBULATORY_ECG), kept).observedBy(observer);
        try (var listener = listen(services)) {
            int port = listener.address().getPort();
            call("storescu", partner, gateway, port, file).succeeded();
            assertThat(kept.stored).hasSize(1);
            assertThat(accepted.poll(5, TimeUnit.SECONDS).certificate()).contains("CN=partner");
            assertThat(call("echoscu", stranger, gateway, port).exit()).isNotZero();
            assertThat(plain(port).exit()).isNotZero();
            assertThat(accepted).isEmpty();
            call("echoscu", partner, gateway, port).succeeded();
        }
    }

    /** dcm4che does not tell of calls that never were an association. */
    @Test
    @Tag("built-in")
    void a_call_that_fails_before_it_is_an_association_is_told() throws Exception {
        var causes = new LinkedBlockingQueue<IOException>();
        var observer =
                new AssociationObserver() {
                    @Override
                    public void stillborn(InetAddress address, IOException cause) {
                        causes.add(cause);
                    }
                };
        try (var listener = listen(Services.echoing().observedBy(observer))) {
            int port = listener.address().getPort();
            call("echoscu", stranger, gateway, port);
            assertThat(causes.poll(5, TimeUnit.SECONDS)).isInstanceOf(SSLException.class);
            plain(port);
            assertThat(causes.poll(15, TimeUnit.SECONDS)).isInstanceOf(SSLException.class);
        }
    }

    private static Listener listen(Services services) throws IOException, GeneralSecurityException {
        return ENGINE.listen(Loopback.local().with(gateway.trusting(partner)), services);
    }

    private static Tool.Result plain(int port) throws IOException {
        return Tool.dcmtk("echoscu", "-aec", Loopback.ARCHIVE, "-ta", 5, "127.0.0.1", port);
    }

    private static Tool.Result call(
            String tool, Certificates own, Certificates trusted, int port, Object... files)
            throws IOException {
        var arguments = new java.util.ArrayList<Object>(List.of(dcmtk(own, trusted)));
        arguments.addAll(List.of("-aec", Loopback.ARCHIVE, "127.0.0.1", port));
        arguments.addAll(List.of(files));
        return Tool.dcmtk(tool, arguments.toArray());
    }
}

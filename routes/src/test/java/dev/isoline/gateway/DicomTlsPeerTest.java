package dev.isoline.gateway;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.peer.Certificates;
import dev.isoline.dicom.peer.Checker;
import dev.isoline.dicom.peer.Storescp;
import dev.isoline.dicom.peer.Tool;
import dev.isoline.ledger.DeliveryTable.DeliveryRow;
import dev.isoline.ledger.DeliveryTable.State;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import org.springframework.test.context.TestPropertySource;

/** TLS of PS3.15 B.9 at the gateway, both ways, with DCMTK; both sides show a certificate. */
@Tag("peer")
@DirtiesContext // its ledger and ports are those of the next gateway of this JVM
@Timeout(120)
@TestPropertySource(
        properties = {
            "isoline.delivery.first-retry=300ms",
            "isoline.delivery.longest-retry=1s",
            "isoline.delivery.attempts=100",
            "isoline.dicom.tls=dicom",
            "isoline.dicom.peers.station.ae-title=STATION",
            "isoline.dicom.peers.station.may=WORKLIST,STORE",
            "isoline.dicom.peers.trusted.ae-title=STORESCP",
            "isoline.dicom.peers.trusted.host=127.0.0.1",
            "isoline.dicom.peers.trusted.tls=dicom",
            "isoline.dicom.peers.impostor.ae-title=STORESCP",
            "isoline.dicom.peers.impostor.host=127.0.0.1",
            "isoline.dicom.peers.impostor.tls=dicom",
            "isoline.destinations.trusted.kind=archive",
            "isoline.destinations.trusted.peer=trusted",
            "isoline.destinations.trusted.receives=objects",
            "isoline.destinations.impostor.kind=archive",
            "isoline.destinations.impostor.peer=impostor",
            "isoline.destinations.impostor.receives=objects"
        })
class DicomTlsPeerTest extends AssembledGateway {

    private static final int DIMSE = freePort();
    private static Certificates gateway;
    private static Certificates partner;
    private static Certificates stranger;
    private static Storescp storescp;
    private static Storescp impostor;

    private final Clinic clinic = Clinic.patient();

    @DynamicPropertySource
    static void dicom(DynamicPropertyRegistry registry) throws Exception {
        Checker.aloneInTheNetwork();
        gateway = Certificates.of(FOLDER, "gateway");
        partner = Certificates.of(FOLDER, "partner");
        stranger = Certificates.of(FOLDER, "stranger");
        storescp = storescp("trusted", partner);
        impostor = storescp("impostor", stranger);
        registry.add("isoline.dicom.port", () -> DIMSE);
        registry.add("isoline.dicom.peers.trusted.port", storescp::port);
        registry.add("isoline.dicom.peers.impostor.port", impostor::port);
        String bundle = "spring.ssl.bundle.pem.dicom.";
        registry.add(bundle + "keystore.certificate", () -> gateway.certificate().toString());
        registry.add(bundle + "keystore.private-key", () -> gateway.key().toString());
        registry.add(bundle + "truststore.certificate", () -> partner.certificate().toString());
    }

    private static Storescp storescp(String name, Certificates own) throws IOException {
        return Storescp.start(Files.createDirectories(FOLDER.resolve(name)), tls(own, gateway));
    }

    @AfterAll
    static void stopPeers() {
        storescp.close();
        impostor.close();
    }

    // Into the gateway

    @Test
    void a_station_with_a_certificate_we_trust_is_served() throws Exception {
        mllp(clinic.order());
        assertThat(scu("echoscu", tls(partner, gateway)).exit()).isZero();
        assertThat(worklist(tls(partner, gateway))).contains(order(clinic.placer()).accession());
        String accession = order(clinic.placer()).accession();
        Path object =
                new EcgObject("2.999.51." + System.nanoTime(), clinic.mrn(), accession)
                        .write(FOLDER, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN);
        assertThat(scu("storescu", tls(partner, gateway), object).output())
                .contains("Received Store Response (Success)");
    }

    @Test
    void a_certificate_we_do_not_trust_opens_nothing() throws Exception {
        mllp(clinic.order());
        assertThat(scu("echoscu", tls(stranger, gateway)).exit()).isNotZero();
        assertThat(worklist(tls(stranger, gateway)))
                .doesNotContain(order(clinic.placer()).accession());
    }

    @Test
    void without_a_certificate_and_without_tls_nobody_is_served() throws Exception {
        Object[] anonymous = {"+tla", "+cf", gateway.certificate()};
        assertThat(scu("echoscu", anonymous).exit()).isNotZero();
        assertThat(scu("echoscu", new Object[] {"-ta", 5}).exit()).isNotZero();
        assertThat(scu("echoscu", tls(partner, gateway)).exit()).isZero();
    }

    /** The other way round: DCMTK trusts the partner, who is not whom it reaches. */
    @Test
    void a_station_that_does_not_trust_us_sends_nothing() throws Exception {
        assertThat(scu("echoscu", tls(partner, stranger)).output()).contains("certificate");
    }

    // Out of the gateway

    @Test
    void objects_go_to_the_archive_that_is_trusted_and_not_to_another_one() throws Exception {
        mllp(clinic.order());
        recording("?order=" + clinic.placer(), Edf.of(clinic).bytes());
        await("stored", () -> !objects("trusted").isEmpty() && areDelivered("trusted"));
        assertThat(storescp.files()).hasSize(objects("trusted").size());
        await("tried", () -> objects("impostor").get(0).attempts() > 0);
        assertThat(objects("impostor")).extracting(DeliveryRow::state).containsOnly(State.PENDING);
        assertThat(impostor.files()).isEmpty();
    }

    private boolean areDelivered(String destination) {
        return objects(destination).stream().allMatch(row -> row.state() == State.DELIVERED);
    }

    private List<DeliveryRow> objects(String destination) {
        return deliveries(clinic.placer()).stream()
                .filter(row -> row.delivery().destination().equals(destination))
                .toList();
    }

    private static Object[] tls(Certificates own, Certificates trusted) {
        return new Object[] {"+tls", own.key(), own.certificate(), "+cf", trusted.certificate()};
    }

    private static String worklist(Object[] security) throws IOException {
        String step = "ScheduledProcedureStepSequence[0].Modality=ECG";
        return scu("findscu", security, "-W", "-k", "AccessionNumber", "-k", step).output();
    }

    /** Options of the tool come before the address, files after it. */
    private static Tool.Result scu(String tool, Object[] security, Object... more)
            throws IOException {
        var arguments = new ArrayList<Object>(List.of("-v", "-aet", "STATION", "-aec", "ISOLINE"));
        arguments.addAll(List.of(security));
        boolean files = more.length > 0 && more[0] instanceof Path;
        arguments.addAll(files ? List.of() : List.of(more));
        arguments.addAll(List.of("127.0.0.1", DIMSE));
        arguments.addAll(files ? List.of(more) : List.of());
        return Tool.dcmtk(tool, arguments.toArray());
    }
}

package dev.isoline.gateway;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.peer.Checker;
import dev.isoline.dicom.peer.Storescp;
import dev.isoline.dicom.peer.Tool;
import dev.isoline.ledger.DeliveryTable.DeliveryRow;
import dev.isoline.ledger.DeliveryTable.NewDelivery;
import dev.isoline.ledger.DeliveryTable.State;
import dev.isoline.ledger.RecordingTable;
import dev.isoline.ledger.RecordingTable.RecordingRow;
import dev.isoline.order.OrderState;
import dev.isoline.peers.Orthanc;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import org.springframework.test.context.TestPropertySource;

/** The gateway among DCMTK's tools as recorder stations, and Orthanc and storescp as archives. */
@Tag("peer")
@DirtiesContext // its ledger and ports are those of the next gateway of this JVM
@Timeout(180)
@TestPropertySource(
        properties = {
            "isoline.delivery.first-retry=300ms",
            "isoline.delivery.longest-retry=1s",
            "isoline.delivery.attempts=100",
            "isoline.dicom.peers.station.ae-title=STATION",
            "isoline.dicom.peers.station.may=WORKLIST,STORE",
            "isoline.dicom.peers.station-2.ae-title=STATION_2",
            "isoline.dicom.peers.station-2.may=STORE",
            "isoline.dicom.peers.viewer.ae-title=VIEWER",
            "isoline.dicom.peers.orthanc.ae-title=ORTHANC",
            "isoline.dicom.peers.orthanc.host=127.0.0.1",
            "isoline.dicom.peers.orthanc.may=COMMIT",
            "isoline.dicom.peers.orthanc.calling=ISOLINE_ARC",
            "isoline.dicom.peers.storescp.ae-title=STORESCP",
            "isoline.dicom.peers.storescp.host=127.0.0.1",
            "isoline.dicom.peers.storescp.max-pdu=16384",
            "isoline.destinations.orthanc.kind=archive",
            "isoline.destinations.orthanc.peer=orthanc",
            "isoline.destinations.orthanc.receives=objects",
            "isoline.destinations.orthanc.commitment.required=true",
            "isoline.destinations.storescp.kind=archive",
            "isoline.destinations.storescp.peer=storescp",
            "isoline.destinations.storescp.receives=objects"
        })
class DicomJourneyPeerTest extends AssembledGateway {

    private static final int DIMSE = freePort();
    private static final Path FILES = FOLDER.resolve("files");
    private static Orthanc orthanc;
    private static Storescp storescp;

    private final Clinic clinic = Clinic.patient();

    @DynamicPropertySource
    static void dicom(DynamicPropertyRegistry registry) throws Exception {
        Checker.aloneInTheNetwork();
        Files.createDirectories(FILES);
        Files.createDirectories(FOLDER.resolve("storescp"));
        orthanc = Orthanc.start(FOLDER.resolve("orthanc"), Orthanc.knows("ISOLINE_ARC", DIMSE));
        storescp = Storescp.start(FOLDER.resolve("storescp"));
        registry.add("isoline.dicom.port", () -> DIMSE);
        registry.add("isoline.dicom.peers.orthanc.port", orthanc::dimsePort);
        registry.add("isoline.dicom.peers.storescp.port", storescp::port);
    }

    @BeforeAll
    static void needTools() {
        Checker.program("storescu", "dcmtk");
    }

    @AfterAll
    static void stopPeers() throws Exception {
        orthanc.close();
        storescp.close();
    }

    // Associations

    @Test
    void a_known_station_that_calls_us_by_our_title_is_answered() throws Exception {
        assertThat(scu("echoscu", "STATION", "ISOLINE").exit()).isZero();
    }

    @Test
    void a_wrong_called_title_and_an_unknown_caller_are_rejected() throws Exception {
        assertThat(scu("echoscu", "-v", "STATION", "OTHER").output())
                .contains("Called AE Title Not Recognized");
        assertThat(scu("echoscu", "-v", "NOBODY", "ISOLINE").output())
                .contains("Calling AE Title Not Recognized");
    }

    // Worklist

    @Test
    void a_station_finds_the_patient_of_an_order_and_nobody_else() throws Exception {
        mllp(clinic.order());
        mllp(Clinic.patient().order());
        String found = worklist("STATION", "PatientID=" + clinic.mrn()).output();
        assertThat(found).contains("Quillfeather^Ottoline", order(clinic.placer()).accession());
        assertThat(found.split("Find Response: ", -1)).hasSize(2);
    }

    @Test
    void a_peer_that_may_not_ask_for_the_worklist_learns_nothing() throws Exception {
        mllp(clinic.order());
        String answer = worklist("VIEWER", "PatientID=" + clinic.mrn()).output();
        assertThat(answer).contains("0x124").doesNotContain("Quillfeather");
    }

    // Archive

    @Test
    void objects_are_stored_by_both_archives_and_committed_by_the_one_that_has_to()
            throws Exception {
        mllp(clinic.order());
        recording("?order=" + clinic.placer(), Edf.of(clinic).bytes());
        await("stored and committed", () -> ended("orthanc") > 0 && ended("storescp") > 0);
        await("all ended", () -> objects("orthanc").allMatch(this::isDelivered));
        for (DeliveryRow row : objects("orthanc").toList()) {
            String file = Path.of(row.delivery().path()).getFileName().toString();
            assertThat(orthanc.instances()).contains(file.replace(".dcm", ""));
            assertThat(ledger.<String>read(t -> t.deliveries().receipt(row.id())))
                    .startsWith("committed, 2.25.");
        }
        assertThat(storescp.files()).isNotEmpty();
        assertThat(timeline()).contains("stored", "delivered");
    }

    @Test
    void an_object_the_archive_has_lost_is_stored_again_and_then_committed() throws Exception {
        mllp(clinic.order());
        String uid = "2.999.40." + System.nanoTime();
        Path object =
                new EcgObject(uid, clinic.mrn(), "A1")
                        .write(FILES, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN);
        Path kept = DATA.resolve("objects").resolve(uid + ".dcm");
        Files.createDirectories(kept.getParent());
        Files.move(object, kept);
        long id = storedThatOrthancNeverGot("objects/" + kept.getFileName());

        await("committed", () -> isDelivered(row(id)));

        assertThat(timeline()).containsSubsequence("not committed", "stored", "delivered");
        assertThat(orthanc.instances()).contains(uid);
    }

    // Recordings

    @Test
    void a_recording_stored_by_a_station_is_analysed_and_its_own_object_is_archived()
            throws Exception {
        mllp(clinic.order());
        String uid = "2.999.41." + System.nanoTime();
        var object = new EcgObject(uid, clinic.mrn(), order(clinic.placer()).accession());
        assertThat(store(object, TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN, "STATION"))
                .contains("Received Store Response (Success)");
        await("analysed", () -> recordings(RecordingTable.State.ANALYSED) == 1);
        await("archived", () -> ended("orthanc") == 1);
        assertThat(orthanc.instances()).contains(uid);
        assertThat(objects("orthanc")).hasSize(1);
        assertThat(due(clinic.placer())).contains("harrow-bay-mllp oru");
    }

    @Test
    void the_same_object_again_is_recognised_in_whatever_transfer_syntax_from_whomever()
            throws Exception {
        mllp(clinic.order());
        String uid = "2.999.42." + System.nanoTime();
        var object = new EcgObject(uid, clinic.mrn(), order(clinic.placer()).accession());
        for (TransferSyntax syntax : TransferSyntax.values()) {
            Path file = object.write(FILES, syntax);
            for (String station : List.of("STATION", "STATION_2")) {
                assertThat(store(file, station)).contains("Received Store Response (Success)");
            }
        }
        await("analysed", () -> recordings(RecordingTable.State.ANALYSED) == 1);
        assertThat(recordings(RecordingTable.State.RECEIVED)).isZero();
    }

    /** PS3.5 9.1: a UID names one object for good. */
    @Test
    void another_object_with_the_uid_of_one_that_is_here_is_refused() throws Exception {
        mllp(clinic.order());
        String uid = "2.999.45." + System.nanoTime();
        String accession = order(clinic.placer()).accession();
        var syntax = TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
        assertThat(store(new EcgObject(uid, clinic.mrn(), accession), syntax, "STATION"))
                .contains("Received Store Response (Success)");
        assertThat(store(new EcgObject(uid, "", accession), syntax, "STATION"))
                .contains("(Error: CannotUnderstand)");
        await("analysed", () -> recordings(RecordingTable.State.ANALYSED) == 1);
    }

    @Test
    void each_object_of_a_series_is_a_recording_of_the_order_with_a_report_of_its_own()
            throws Exception {
        mllp(clinic.order());
        String study = "2.999.46." + System.nanoTime();
        String accession = order(clinic.placer()).accession();
        for (int day = 1; day <= 2; day++) {
            String uid = study + "." + day;
            var object = new EcgObject(uid, clinic.mrn(), accession, study, day);
            assertThat(store(object, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN, "STATION"))
                    .contains("Received Store Response (Success)");
        }
        await("analysed", () -> recordings(RecordingTable.State.ANALYSED) == 2);
        await("archived", () -> ended("orthanc") == 2);
        assertThat(orthanc.instances()).contains(study + ".1", study + ".2");
        assertThat(due(clinic.placer()).stream().filter("harrow-bay-mllp oru"::equals)).hasSize(2);
        assertThat(order(clinic.placer()).state()).isEqualTo(OrderState.REVIEW);
    }

    @Test
    void an_object_of_another_patient_is_kept_as_it_came_and_held() throws Exception {
        mllp(clinic.order());
        var object =
                new EcgObject(
                        "2.999.43." + System.nanoTime(),
                        "QMR0",
                        order(clinic.placer()).accession());
        assertThat(store(object, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN, "STATION"))
                .contains("Received Store Response (Success)");
        RecordingRow held =
                ledger.read(t -> t.recordings().byState(RecordingTable.State.HELD, 100)).stream()
                        .filter(r -> order(clinic.placer()).id().equals(r.orderId()))
                        .findFirst()
                        .orElseThrow();
        assertThat(held.problem())
                .isEqualTo("The recording names another patient identifier than the order.");
    }

    @Test
    void an_object_of_no_order_and_a_station_that_may_not_store_are_refused() throws Exception {
        mllp(clinic.order());
        var object = new EcgObject("2.999.44." + System.nanoTime(), clinic.mrn(), "NONE1");
        Path file = object.write(FILES, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN);
        assertThat(store(file, "STATION")).contains("(Error: CannotUnderstand)");
        assertThat(store(file, "VIEWER")).contains("0x124");
    }

    private static Tool.Result scu(String tool, String... more) throws IOException {
        String called = more[more.length - 1];
        String calling = more[more.length - 2];
        return Tool.dcmtk(tool, "-v", "-aet", calling, "-aec", called, "127.0.0.1", "" + DIMSE);
    }

    private static Tool.Result worklist(String calling, String key) throws IOException {
        return Tool.dcmtk(
                "findscu",
                "-v",
                "-W",
                "-aet",
                calling,
                "-aec",
                "ISOLINE",
                "-k",
                key,
                "-k",
                "PatientName",
                "-k",
                "AccessionNumber",
                "-k",
                "ScheduledProcedureStepSequence[0].Modality=ECG",
                "127.0.0.1",
                "" + DIMSE);
    }

    private static String store(EcgObject object, TransferSyntax syntax, String calling)
            throws IOException {
        return store(object.write(FILES, syntax), calling);
    }

    private static String store(Path file, String calling) throws IOException {
        return Tool.dcmtk(
                        "storescu",
                        "-v",
                        "-R",
                        "-aet",
                        calling,
                        "-aec",
                        "ISOLINE",
                        "127.0.0.1",
                        "" + DIMSE,
                        file)
                .output();
    }

    private Stream<DeliveryRow> objects(String destination) {
        return deliveries(clinic.placer()).stream()
                .filter(row -> row.delivery().destination().equals(destination));
    }

    private long ended(String destination) {
        return objects(destination).filter(this::isDelivered).count();
    }

    private boolean isDelivered(DeliveryRow row) {
        return row.state() == State.DELIVERED;
    }

    private DeliveryRow row(long id) {
        return ledger.read(t -> t.deliveries().byId(id)).orElseThrow();
    }

    private long recordings(RecordingTable.State state) {
        String id = order(clinic.placer()).id();
        return ledger.read(t -> t.recordings().byState(state, 1000)).stream()
                .filter(row -> id.equals(row.orderId()))
                .count();
    }

    private List<String> timeline() {
        String id = order(clinic.placer()).id();
        return ledger.read(t -> t.timeline().of(id)).stream().map(e -> e.event()).toList();
    }

    /** As after a C-STORE: the object waits to be committed, and the request is due. */
    private long storedThatOrthancNeverGot(String path) {
        String id = order(clinic.placer()).id();
        Instant now = Instant.now();
        return ledger.write(
                        t -> {
                            long object =
                                    t.deliveries()
                                            .add(delivery("orthanc", id, "object", path, now));
                            t.deliveries().stored(object, "0000 success");
                            t.deliveries()
                                    .add(
                                            delivery(
                                                    "orthanc/commitment",
                                                    id,
                                                    "commitment",
                                                    null,
                                                    now));
                            return object;
                        })
                .join();
    }

    private static NewDelivery delivery(
            String to, String order, String kind, String path, Instant at) {
        return new NewDelivery(to, order, kind, "application/dicom", null, path, at);
    }
}

package dev.isoline.dicom.peer;

import static dev.isoline.dicom.dimse.Loopback.AMBULATORY_ECG;
import static dev.isoline.dicom.dimse.Loopback.ENGINE;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.dimse.Loopback;
import dev.isoline.dicom.spi.Abort;
import dev.isoline.dicom.spi.MaxPdu;
import dev.isoline.dicom.spi.Offer;
import dev.isoline.dicom.spi.Rejection;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.dicom.spi.Status;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The built-in engine against DCMTK's echoscu, storescu, findscu and storescp. */
@Tag("peer")
@Timeout(120)
class DcmtkPeerTest {

    private static final Offer STORAGE = Offer.storage(List.of(AMBULATORY_ECG));

    @TempDir Path folder;

    private Path objectFile(TransferSyntax syntax) throws IOException {
        Path file = folder.resolve(syntax + ".dcm");
        try (var channel =
                FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            Part10.write(channel, syntax, Loopback.object(folder, 700_000));
        }
        return file;
    }

    private static DataSet read(Path file) throws IOException {
        try (var channel = FileChannel.open(file)) {
            return Part10.read(channel, new ReadLimits(32, 1000, 1 << 20, 1 << 21)).dataSet();
        }
    }

    private Path received() throws IOException {
        return Files.createDirectories(folder.resolve("received"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "+xi",
                "+xe",
                "-pdu 4096",
                "-pdu 131072",
                "-B",
                "+xi -pdu 4096 --bit-preserving"
            })
    void storescp_keeps_what_it_is_sent(String options) throws IOException {
        Path file = objectFile(TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN);
        Object[] words = options.isEmpty() ? new Object[0] : options.split(" ");
        try (var storescp = Storescp.start(received(), words)) {
            try (var association = ENGINE.associate(storescp.remote(), STORAGE)) {
                assertThat(association.store(file)).isEqualTo(Status.SUCCESS);
                assertThat(association.store(Loopback.head("1.2.3"))).isEqualTo(Status.SUCCESS);
            }
            assertThat(storescp.files()).hasSize(2);
            for (Path kept : storescp.files()) {
                DataSet sent = kept.toString().endsWith("1.2.3") ? null : read(file);
                if (sent != null) {
                    assertThat(read(kept)).isEqualTo(sent);
                }
            }
        }
    }

    @Test
    void a_small_limit_of_ours_is_kept_to_as_well() throws IOException {
        Path file = objectFile(TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN);
        try (var storescp = Storescp.start(received())) {
            var remote = storescp.remote().with(new MaxPdu(4096, 1000));
            try (var association = ENGINE.associate(remote, STORAGE)) {
                assertThat(association.store(file)).isEqualTo(Status.SUCCESS);
            }
            assertThat(read(storescp.files().get(0))).isEqualTo(read(file));
        }
    }

    @Test
    void storescp_that_refuses_is_a_rejection_with_its_reason() throws IOException {
        try (var storescp = Storescp.start(received(), "--refuse")) {
            assertThatThrownBy(() -> ENGINE.associate(storescp.remote(), STORAGE))
                    .isInstanceOf(Rejection.class)
                    .hasMessage(
                            "association rejected permanently by the service user: no reason given");
        }
    }

    @Test
    void storescp_that_aborts_is_an_abort() throws IOException {
        Path file = objectFile(TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN);
        try (var storescp = Storescp.start(received(), "--abort-during")) {
            var association = ENGINE.associate(storescp.remote(), STORAGE);
            // its A-ABORT may be lost with the connection it closes while we still send
            assertThatThrownBy(() -> association.store(file))
                    .isInstanceOf(IOException.class)
                    .satisfiesAnyOf(
                            e -> assertThat(e).isInstanceOf(Abort.class),
                            e ->
                                    assertThat(e)
                                            .hasMessageMatching(
                                                    "(?i)connection reset.*|broken pipe"));
            association.close();
        }
    }

    @Test
    void echoscu_is_answered_and_a_wrong_title_rejected() throws IOException {
        try (var listener = ENGINE.listen(Loopback.local(), Services.echoing())) {
            int port = listener.address().getPort();
            Tool.dcmtk("echoscu", "-v", "-aec", Loopback.ARCHIVE, "127.0.0.1", port).succeeded();
            Tool.dcmtk(
                            "echoscu",
                            "--repeat",
                            5,
                            "--propose-pc",
                            100,
                            "-aec",
                            Loopback.ARCHIVE,
                            "127.0.0.1",
                            port)
                    .succeeded();
            Tool.dcmtk("echoscu", "--abort", "-aec", Loopback.ARCHIVE, "127.0.0.1", port);
            var wrong = Tool.dcmtk("echoscu", "-v", "-aec", "OTHER", "127.0.0.1", port);
            assertThat(wrong.exit()).isNotZero();
            assertThat(wrong.output()).contains("Called AE Title Not Recognized");
        }
    }

    @ParameterizedTest
    @CsvSource({"-xe, 0, 4096", "-xi, 4096, 16384", "-x=, 131072, 131072", "-xi, 200000, 65536"})
    void storescu_sends_and_the_data_set_is_the_same(String syntax, int ours, int theirs)
            throws IOException {
        Path file = objectFile(TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN);
        var kept = new Loopback.Folder(received());
        var local = Loopback.local().with(new MaxPdu(ours, 0));
        try (var listener = Loopback.storing(local, kept)) {
            Tool.dcmtk(
                            "storescu",
                            "-v",
                            syntax,
                            "-pdu",
                            theirs,
                            "--max-send-pdu",
                            theirs,
                            "-aec",
                            Loopback.ARCHIVE,
                            "127.0.0.1",
                            listener.address().getPort(),
                            file)
                    .succeeded();
        }
        String instance = kept.stored.remove().sopInstance();
        assertThat(read(kept.of(instance))).isEqualTo(read(file));
    }

    @Test
    void storescu_is_told_of_a_failure_and_of_a_warning() throws IOException {
        Path file = objectFile(TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN);
        var kept = new Loopback.Folder(received());
        try (var listener = Loopback.storing(Loopback.local(), kept)) {
            Object[] call = {
                "-v", "-aec", Loopback.ARCHIVE, "127.0.0.1", listener.address().getPort(), file
            };
            kept.answer = Status.OUT_OF_RESOURCES.because("no room");
            assertThat(Tool.dcmtk("storescu", call).output()).contains("Refused: OutOfResources");
            Files.delete(
                    kept.of(read(file).text(dev.isoline.dicom.Tag.SOPInstanceUID).orElseThrow()));
            kept.answer = Status.COERCION;
            assertThat(Tool.dcmtk("storescu", call).output())
                    .contains("Warning: CoercionOfDataElements");
        }
    }

    @Test
    void findscu_gets_the_matches_and_may_cancel() throws IOException {
        var services =
                Services.echoing()
                        .finding(
                                SopClass.MODALITY_WORKLIST_FIND,
                                (request, pending) -> {
                                    for (int i = 0; i < 50; i++) {
                                        var row =
                                                new DataSet()
                                                        .putText(
                                                                dev.isoline.dicom.Tag.PatientID,
                                                                "P" + i);
                                        if (!pending.send(row, Status.PENDING)) {
                                            return Status.CANCEL;
                                        }
                                        pause();
                                    }
                                    return Status.SUCCESS;
                                });
        try (var listener = ENGINE.listen(Loopback.local(), services)) {
            int port = listener.address().getPort();
            var all =
                    Tool.dcmtk(
                            "findscu",
                            "-v",
                            "-W",
                            "-k",
                            "0010,0020=",
                            "-aec",
                            Loopback.ARCHIVE,
                            "127.0.0.1",
                            port);
            assertThat(all.succeeded().output()).contains("P49").contains("Final Find Response");
            var some =
                    Tool.dcmtk(
                            "findscu",
                            "-v",
                            "-W",
                            "--cancel",
                            3,
                            "-k",
                            "0010,0020=",
                            "-aec",
                            Loopback.ARCHIVE,
                            "127.0.0.1",
                            port);
            assertThat(some.output()).contains("Sending Cancel Request").contains("Cancel");
            assertThat(some.output()).doesNotContain("P49");
        }
    }

    private static void pause() {
        try {
            Thread.sleep(5);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}

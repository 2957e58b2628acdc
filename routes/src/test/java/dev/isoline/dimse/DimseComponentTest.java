package dev.isoline.dimse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.spi.CommitmentRequest;
import dev.isoline.dicom.spi.ContextNotAccepted;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Pending;
import dev.isoline.dicom.spi.Refused;
import dev.isoline.dicom.spi.Rejection;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.dicom.spi.SopReference;
import dev.isoline.dicom.spi.Status;
import dev.isoline.dicom.spi.StoreRequest;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.camel.CamelContext;
import org.apache.camel.Exchange;
import org.apache.camel.builder.RouteBuilder;
import org.apache.camel.impl.DefaultCamelContext;
import org.assertj.core.util.Throwables;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The component against itself over real sockets; peers of other makes are in the peer tests. */
@Timeout(60)
class DimseComponentTest {

    private static final String AMBULATORY_ECG = "1.2.840.10008.5.1.4.1.1.9.1.3";

    @TempDir Path folder;
    private final CamelContext camel = new DefaultCamelContext();
    private int port;

    @BeforeEach
    void start() throws Exception {
        port = freePort();
    }

    @AfterEach
    void stop() throws Exception {
        camel.close();
    }

    @Test
    void one_application_entity_hosts_several_routes() throws Exception {
        serve(
                new RouteBuilder() {
                    @Override
                    public void configure() {
                        from(local("FIND", "&sopClasses=" + SopClass.MODALITY_WORKLIST_FIND))
                                .process(DimseComponentTest::answerTwice);
                        from(local("STORE", "&sopClasses=" + AMBULATORY_ECG + in("incoming")))
                                .process(exchange -> keep(exchange));
                    }
                });
        assertThat(call("ECHO", "", null, Map.of())).isEqualTo(Status.SUCCESS);
        assertThat(store("2.999.5")).isEqualTo(Status.SUCCESS);
        assertThat(dataSet("2.999.5")).isEqualTo(dataSet("out.dcm"));
        Object found =
                call(
                        "FIND",
                        "&sopClasses=" + SopClass.MODALITY_WORKLIST_FIND,
                        new DataSet().putText(Tag.PatientID, "QMR*"),
                        Map.of());
        assertThat((List<?>) found).hasSize(2);
    }

    @Test
    void what_a_route_leaves_behind_is_no_file() throws Exception {
        serve(
                new RouteBuilder() {
                    @Override
                    public void configure() {
                        from(local("STORE", "&sopClasses=" + AMBULATORY_ECG + in("incoming")))
                                .setBody(e -> Status.OUT_OF_RESOURCES.because("disk full"));
                    }
                });
        assertThat(store("2.999.5")).isEqualTo(Status.OUT_OF_RESOURCES.because("disk full"));
        try (Stream<Path> left = Files.list(folder.resolve("incoming"))) {
            assertThat(left).isEmpty();
        }
    }

    @Test
    void a_refusal_thrown_in_a_route_is_answered_with_its_status() throws Exception {
        serve(failing(new Refused(Status.NOT_AUTHORIZED)));
        assertThat(store("2.999.5").code()).isEqualTo(0x0124);
    }

    @Test
    void any_other_fault_is_a_failure_of_the_service() throws Exception {
        serve(failing(new IllegalStateException("Quillfeather")));
        Status status = store("2.999.5");
        assertThat(status.isPerformed()).isFalse();
        assertThat(status.comment()).doesNotContain("Quillfeather");
    }

    @Test
    void a_service_without_a_route_has_no_context() throws Exception {
        serve(failing(new Refused(Status.NOT_AUTHORIZED)));
        assertThatThrownBy(
                        () ->
                                call(
                                        "FIND",
                                        "&sopClasses=" + SopClass.MODALITY_WORKLIST_FIND,
                                        new DataSet(),
                                        Map.of()))
                .isInstanceOf(ContextNotAccepted.class);
    }

    @Test
    void a_caller_that_is_not_listed_is_rejected() throws Exception {
        serve(
                new RouteBuilder() {
                    @Override
                    public void configure() {
                        from(local("ECHO", "&callers=RAW(OTHER 1,OTHER 2)")).setBody(e -> null);
                    }
                });
        assertThatThrownBy(() -> call("ECHO", "", null, Map.of())).isInstanceOf(Rejection.class);
        assertThat(call("ECHO", "&calling=RAW(OTHER 2)", null, Map.of())).isEqualTo(Status.SUCCESS);
    }

    @Test
    void a_port_that_cannot_be_had_is_named() throws Exception {
        try (var taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = taken.getLocalPort();
            assertThatThrownBy(() -> serve(failing(new Refused(Status.NOT_AUTHORIZED))))
                    .extracting(Throwables::getRootCause)
                    .extracting(Throwable::getMessage)
                    .asString()
                    .startsWith("cannot listen on 127.0.0.1:" + port);
        }
    }

    @Test
    void a_route_started_later_is_served_too() throws Exception {
        serve(failing(new Refused(Status.NOT_AUTHORIZED)));
        camel.addRoutes(
                new RouteBuilder() {
                    @Override
                    public void configure() {
                        from(local("ECHO", ""))
                                .setBody(e -> Status.PROCESSING_FAILURE)
                                .routeId("late");
                    }
                });
        assertThat(call("ECHO", "", null, Map.of())).isEqualTo(Status.PROCESSING_FAILURE);
        camel.getRouteController().stopRoute("late");
        assertThat(call("ECHO", "", null, Map.of())).isEqualTo(Status.SUCCESS);
        assertThat(store("2.999.5").code()).isEqualTo(0x0124);
    }

    @Test
    void the_producer_asks_an_archive_that_serves_no_commitment_in_vain() throws Exception {
        serve(failing(new Refused(Status.NOT_AUTHORIZED)));
        var request =
                new CommitmentRequest(
                        "2.999.77", List.of(new SopReference(AMBULATORY_ECG, "2.999.5")));
        assertThatThrownBy(() -> call("COMMITMENT", "&linger=1s", request, Map.of()))
                .isInstanceOf(ContextNotAccepted.class);
    }

    private void serve(RouteBuilder routes) throws Exception {
        camel.addRoutes(routes);
        camel.start();
    }

    private RouteBuilder failing(Exception fault) {
        return new RouteBuilder() {
            @Override
            public void configure() {
                errorHandler(noErrorHandler());
                from(local("STORE", "&sopClasses=" + AMBULATORY_ECG + in("incoming")))
                        .throwException(fault);
            }
        };
    }

    private Status store(String uid) throws Exception {
        Path file = folder.resolve("out.dcm");
        Files.deleteIfExists(file);
        try (var channel =
                FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            Part10.write(
                    channel,
                    TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN,
                    new DataSet()
                            .putText(Tag.SOPClassUID, AMBULATORY_ECG)
                            .putText(Tag.SOPInstanceUID, uid)
                            .putText(Tag.PatientID, "QMR1"));
        }
        return (Status) call("STORE", "", file, Map.of(DimseEndpoint.SOP_CLASS, AMBULATORY_ECG));
    }

    private DataSet dataSet(String name) throws IOException {
        try (var channel = FileChannel.open(folder.resolve(name))) {
            return Part10.read(channel, ReadLimits.DEFAULT).dataSet();
        }
    }

    private Object call(String service, String options, Object body, Map<String, Object> headers)
            throws Exception {
        String uri = "dimse:127.0.0.1:%d?title=HERE&service=%s%s".formatted(port, service, options);
        Exchange exchange =
                camel.createProducerTemplate()
                        .request(
                                uri,
                                e -> {
                                    e.getMessage().setBody(body);
                                    e.getMessage().setHeaders(headers);
                                });
        if (exchange.getException() != null) {
            throw exchange.getException();
        }
        return exchange.getMessage().getBody();
    }

    private String local(String service, String options) {
        return "dimse:127.0.0.1:%d?title=HERE&service=%s&idle=PT30S%s"
                .formatted(port, service, options);
    }

    private String in(String name) {
        return "&folder=" + folder.resolve(name);
    }

    private static void answerTwice(Exchange exchange) throws IOException {
        Pending pending = exchange.getIn().getHeader(DimseEndpoint.PENDING, Pending.class);
        var peer = exchange.getIn().getHeader(DimseEndpoint.PEER, Peer.class);
        assertThat(peer.calling()).hasToString("ISOLINE");
        for (String id : List.of("QMR1", "QMR2")) {
            pending.send(new DataSet().putText(Tag.PatientID, id), Status.PENDING);
        }
        exchange.getMessage().setBody(Status.SUCCESS);
    }

    private void keep(Exchange exchange) throws IOException {
        var request = exchange.getIn().getHeader(DimseEndpoint.STORE_REQUEST, StoreRequest.class);
        Path file = exchange.getIn().getBody(Path.class);
        Files.move(file, folder.resolve(request.instance().sopInstance()));
        exchange.getMessage().setBody(Status.SUCCESS);
    }

    private static int freePort() throws IOException {
        try (var socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }
}

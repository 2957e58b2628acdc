package dev.isoline.gateway;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.order.OrderState;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.stream.IntStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.hl7.fhir.r4.model.DiagnosticReport;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Task;
import org.junit.jupiter.api.Test;

/** docs/flows/03-recording-in.md and 04-result-out.md, told over HTTP and a folder. */
class RecordingJourneyTest extends AssembledGateway {

    private static final String METRICS =
            "https://isoline.example/fhir/CodeSystem/ambulatory-ecg-metric";
    private static final ObjectMapper JSON = new ObjectMapper();

    private final Clinic clinic = Clinic.patient();

    // Taken

    @Test
    void a_recording_is_taken_analysed_and_reported() {
        mllp(clinic.order());
        var response = recording("?order=" + clinic.placer(), Edf.of(clinic).bytes());
        assertThat(response.statusCode()).as(response.body()).isEqualTo(202);
        assertThat(text(response, "order")).isEqualTo(order(clinic.placer()).id());
        isAnalysed(response);
        String reference = "ServiceRequest/" + order(clinic.placer()).id();
        assertThat(search(DiagnosticReport.class, "based-on=" + reference))
                .singleElement()
                .extracting(r -> r.getStatus().toCode())
                .isEqualTo("preliminary");
        assertThat(search(Task.class, "focus=" + reference).get(0).getBusinessStatus().getCoding())
                .extracting(c -> c.getCode())
                .containsExactly("review");
        assertThat(due(clinic.placer()))
                .contains("tern-street order", "tern-street status", "harrow-bay-mllp oru");
    }

    /** It begins at 14:00 in +0500; the clinic is in Lisbon. */
    @Test
    void a_dicom_object_is_a_recording_whose_times_are_in_its_own_offset() throws IOException {
        mllp(clinic.order());
        var object =
                new EcgObject(
                        "2.999.61." + System.nanoTime(),
                        clinic.mrn(),
                        order(clinic.placer()).accession());
        Path file = object.write(FOLDER, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN);
        isAnalysed(recording("", Files.readAllBytes(file)));
        String reference = "ServiceRequest/" + order(clinic.placer()).id();
        assertThat(search(DiagnosticReport.class, "based-on=" + reference))
                .singleElement()
                .extracting(r -> r.getEffectivePeriod().getStart().toInstant().toString())
                .isEqualTo("2026-11-04T09:00:00Z");
    }

    /** The file has 60 beats a minute. */
    @Test
    void the_mean_heart_rate_of_the_recording_is_found_by_search() {
        mllp(clinic.order());
        isAnalysed(recording("", Edf.of(clinic).bytes()));
        var panel =
                search(
                        Observation.class,
                        "based-on=ServiceRequest/"
                                + order(clinic.placer()).id()
                                + "&code="
                                + METRICS
                                + "%7Cheart-rate-panel");
        assertThat(panel).hasSize(1);
        assertThat(panel.get(0).getComponent())
                .filteredOn(c -> c.getCode().hasCoding(METRICS, "heart-rate-mean"))
                .singleElement()
                .extracting(c -> c.getValueQuantity().getValue().doubleValue())
                .satisfies(rate -> assertThat(rate).isBetween(59.0, 61.0));
    }

    @Test
    void filler_and_accession_number_find_the_order_as_well() {
        var later = clinic.anotherOrder();
        mllp(clinic.orders(clinic.placer(), later.placer()));
        var first = recording("?order=" + order(clinic.placer()).filler(), Edf.of(clinic).bytes());
        assertThat(text(first, "order")).isEqualTo(order(clinic.placer()).id());
        var second =
                recording("?order=" + order(later.placer()).accession(), Edf.of(later).bytes());
        assertThat(text(second, "order")).isEqualTo(order(later.placer()).id());
    }

    @Test
    void the_same_bytes_again_are_the_same_recording() {
        mllp(clinic.order());
        var first = recording("?order=" + clinic.placer(), Edf.of(clinic).bytes());
        isAnalysed(first);
        var deliveries = deliveries(clinic.placer()).size();
        var again = recording("?order=" + clinic.placer(), Edf.of(clinic).bytes());
        assertThat(again.statusCode()).isEqualTo(200);
        assertThat(text(again, "id")).isEqualTo(text(first, "id"));
        assertThat(deliveries(clinic.placer())).hasSize(deliveries);
    }

    // Held

    @Test
    void a_recording_of_somebody_else_is_held_and_the_answer_names_the_item_not_the_value() {
        mllp(clinic.order());
        var wrong =
                new Edf("QMR9 F 13-JUL-1959 Quillfeather_Ottoline", "Startdate 04-NOV-2026 X X X");
        var response = recording("?order=" + clinic.placer(), wrong.bytes());
        assertThat(response.statusCode()).isEqualTo(202);
        assertThat(text(response, "state")).isEqualTo("held");
        assertThat(text(response, "problem")).contains("patient identifier").doesNotContain("QMR");
        assertThat(order(clinic.placer()).state()).isEqualTo(OrderState.READY);
    }

    @Test
    void a_recording_for_an_order_on_hold_waits_until_the_order_is_released() {
        mllp(clinic.orderWithoutInsurance());
        var response = recording("?order=" + clinic.placer(), Edf.of(clinic).bytes());
        assertThat(response.statusCode()).isEqualTo(202);
        assertThat(text(response, "state")).isEqualTo("held");
        mllp(clinic.adt());
        isAnalysed(response);
    }

    // Refused

    @Test
    void an_unknown_number_is_404() {
        refused(recording("?order=none", Edf.anonymous("a").bytes()), 404);
    }

    @Test
    void a_recording_that_names_no_order_is_404() {
        refused(recording("", Edf.anonymous("b").bytes()), 404);
    }

    @Test
    void a_cancelled_order_takes_no_recording() {
        mllp(clinic.order());
        mllp(clinic.order("CA"));
        refused(recording("?order=" + clinic.placer(), Edf.of(clinic).bytes()), 409);
    }

    @Test
    void a_text_a_cut_file_and_nothing_at_all_are_422() {
        mllp(clinic.order());
        byte[] whole = Edf.of(clinic).bytes();
        String query = "?order=" + clinic.placer();
        refused(recording(query, "Dear colleague\n".getBytes(StandardCharsets.UTF_8)), 422);
        refused(recording(query, Arrays.copyOf(whole, 700)), 422);
        refused(recording(query, Arrays.copyOf(whole, whole.length - 1000)), 422);
        refused(recording(query, zip("r.hea", "r 1 250 100\nr.dat 16 200 12 0 0 0 0 II\n")), 422);
        refused(recording(query, new byte[0]), 422);
        assertThat(order(clinic.placer()).state()).isEqualTo(OrderState.READY);
    }

    @Test
    void a_file_that_was_refused_is_not_kept() throws IOException {
        mllp(clinic.order());
        long before = kept();
        refused(recording("?order=none", Edf.of(clinic).bytes()), 404);
        assertThat(kept()).isEqualTo(before);
        assertThat(recording("", Edf.of(clinic).bytes()).statusCode()).isEqualTo(202);
    }

    @Test
    void bytes_refused_for_one_number_stay_those_of_a_recording_taken_at_the_same_time() {
        mllp(clinic.order());
        byte[] file = Edf.of(clinic).bytes();
        IntStream.range(0, 8)
                .parallel()
                .forEach(i -> recording("?order=" + (i == 3 ? clinic.placer() : "none"), file));
        await("the result", () -> order(clinic.placer()).state() == OrderState.REVIEW);
    }

    @Test
    void nothing_is_taken_without_a_credential() {
        var body = HttpRequest.BodyPublishers.ofByteArray(Edf.of(clinic).bytes());
        assertThat(http("", "POST", "/recordings", "application/edf", body).statusCode())
                .isEqualTo(401);
    }

    // Watched folder

    @Test
    void the_watched_folder_takes_what_names_its_order() throws IOException {
        mllp(clinic.order());
        drop("r" + clinic.placer().substring(3) + ".edf", Edf.of(clinic).bytes());
        await(
                "done",
                () ->
                        Files.exists(
                                INBOX.resolve("done/r" + clinic.placer().substring(3) + ".edf")));
        await("the result", () -> order(clinic.placer()).state() == OrderState.REVIEW);
    }

    @Test
    void the_watched_folder_goes_by_the_name_of_a_file_that_names_none() throws IOException {
        mllp(clinic.order());
        drop(clinic.placer() + ".edf", Edf.anonymous(clinic.placer()).bytes());
        await("the result", () -> order(clinic.placer()).state() == OrderState.REVIEW);
    }

    @Test
    void the_watched_folder_puts_what_it_cannot_use_beside_the_reason() throws IOException {
        drop("letter.edf", "Dear colleague\n".getBytes(StandardCharsets.UTF_8));
        Path reason = INBOX.resolve("refused/letter.edf.problem.txt");
        await("refused", () -> Files.exists(reason) && length(reason) > 0);
        assertThat(Files.readString(reason).lines()).hasSize(1);
        assertThat(INBOX.resolve("refused/letter.edf")).exists();
        assertThat(INBOX.resolve("letter.edf")).doesNotExist();
    }

    @Test
    void an_entry_of_the_watched_folder_that_cannot_be_read_holds_up_no_other() throws IOException {
        Path dangling = Files.createSymbolicLink(INBOX.resolve("a-link.edf"), Path.of("nowhere"));
        drop("z-letter.edf", "Dear colleague\n".getBytes(StandardCharsets.UTF_8));
        await("refused", () -> Files.exists(INBOX.resolve("refused/z-letter.edf")));
        Files.delete(dangling);
    }

    private void isAnalysed(HttpResponse<String> taken) {
        assertThat(taken.statusCode()).as(taken.body()).isEqualTo(202);
        String path = "/recordings/" + text(taken, "id");
        var nothing = HttpRequest.BodyPublishers.noBody();
        await(
                "the result",
                () ->
                        text(http("recorder-station", "GET", path, "text/plain", nothing), "state")
                                .equals("analysed"));
        assertThat(order(clinic.placer()).state()).isEqualTo(OrderState.REVIEW);
    }

    /** RFC 9457: one sentence in {@code detail}. */
    private static void refused(HttpResponse<String> response, int status) {
        assertThat(response.statusCode()).as(response.body()).isEqualTo(status);
        assertThat(response.headers().firstValue("Content-Type"))
                .hasValueSatisfying(
                        type -> assertThat(type).startsWith("application/problem+json"));
        assertThat(text(response, "detail")).matches("[A-Z][^\n]*\\.").doesNotContain("Exception");
        assertThat(Secrets.areIn(response.body())).isFalse();
    }

    private static String text(HttpResponse<String> response, String field) {
        try {
            JsonNode node = JSON.readTree(response.body()).path(field);
            return node.asText();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void drop(String name, byte[] file) throws IOException {
        Path part = Files.write(INBOX.resolve(name + ".part"), file);
        Files.move(part, INBOX.resolve(name), StandardCopyOption.ATOMIC_MOVE);
    }

    private static byte[] zip(String name, String content) {
        var bytes = new ByteArrayOutputStream();
        try (var zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry(name));
            zip.write(content.getBytes(StandardCharsets.US_ASCII));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    private static long kept() throws IOException {
        try (var files = Files.walk(DATA.resolve("recordings"))) {
            return files.filter(Files::isRegularFile).count();
        }
    }

    private static long length(Path file) {
        try {
            return Files.size(file);
        } catch (IOException e) {
            return 0;
        }
    }
}

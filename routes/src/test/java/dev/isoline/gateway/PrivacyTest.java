package dev.isoline.gateway;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Level;
import java.io.IOException;
import java.net.http.HttpRequest;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.hl7.fhir.r4.model.DateType;
import org.junit.jupiter.api.Test;

/**
 * docs/ARCHITECTURE.md, invariants: logs and file names hold no patient detail. That every test of
 * this package leaves none in the log is checked after each of them.
 */
class PrivacyTest extends AssembledGateway {

    private final Clinic clinic = Clinic.patient();

    @Test
    void the_check_of_the_log_would_see_a_disclosure() {
        var log = new LogWatch();
        log.listen();
        org.slf4j.LoggerFactory.getLogger("dev.isoline").info("Patient {}", "Quillfeather");
        assertThat(log.disclosures()).hasSize(1);
        LOG.forgive("Patient Quillfeather");
    }

    @Test
    void good_and_bad_messages_leave_a_log_without_patients() {
        int before = LOG.lines().size();
        mllp(clinic.orderWithoutInsurance());
        mllp(clinic.adt());
        mllp(clinic.order("XO"));
        mllp(clinic.adt().replace("19590713|F", "19590714|M"));
        mllp(clinic.order().replace("|2.5.1|", "|9.9|"));
        mllp(clinic.order().replace("UNICODE UTF-8", "EBCDIC"));
        mllp(clinic.order().replace("PID|1|", "PID|1|\u0007"));
        mllp(clinic.order().replace("|19590713|", "|Marrow Lane|"));
        mllp("Quillfeather Ottoline QMR1");
        assertThat(LOG.lines().size()).isGreaterThan(before + 5);
        assertThat(LOG.disclosures()).isEmpty();
    }

    /** The answers of the FHIR API to its own client may not quote the values either. */
    @Test
    void refused_fhir_requests_neither_log_nor_repeat_what_they_said() {
        mllp(clinic.order());
        var contradicting = clinic.person().setBirthDateElement(new DateType("1959-07-14"));
        String id = order(clinic.placer()).patientId();
        var refusals =
                List.of(
                        fhir("sable-point", "POST", "/Patient", clinic.person()).body(),
                        fhir("sable-point", "PUT", "/Patient/" + id, contradicting).body(),
                        raw("/Patient", "{\"resourceType\":\"Patient\",\"birthDate\":\"Marrow\"}"),
                        raw("/Patient", "{\"resourceType\":\"Patient\",\"gender\":\"Ottoline\"}"),
                        raw("/Patient", "Quillfeather Ottoline"));
        assertThat(refusals).allMatch(body -> body.contains("OperationOutcome"));
        assertThat(refusals.stream().filter(Secrets::areIn)).isEmpty();
        assertThat(LOG.disclosures()).isEmpty();
    }

    @Test
    void recordings_leave_neither_log_lines_nor_file_names_with_patients() throws IOException {
        mllp(clinic.order());
        byte[] whole = Edf.of(clinic).bytes();
        recording("?order=" + clinic.placer(), Arrays.copyOf(whole, 700));
        recording("?order=QPL-unknown", whole);
        Files.createDirectories(INBOX);
        Files.write(INBOX.resolve("Quillfeather-Ottoline.edf"), Arrays.copyOf(whole, 700));
        recording("?order=" + clinic.placer(), whole);
        await("the result", () -> due(clinic.placer()).contains("harrow-bay-mllp oru"));
        await("refused", () -> !Files.exists(INBOX.resolve("Quillfeather-Ottoline.edf")));
        assertThat(LOG.disclosures()).isEmpty();
        try (var files = Files.walk(DATA)) {
            assertThat(files.map(DATA::relativize).map(Path::toString))
                    .hasSizeGreaterThan(3)
                    .noneMatch(Secrets::areIn);
        }
    }

    @Test
    void nothing_below_info_is_logged() {
        var root =
                (ch.qos.logback.classic.Logger)
                        org.slf4j.LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
        assertThat(root.getLoggerContext().getLoggerList())
                .allMatch(logger -> logger.getEffectiveLevel().isGreaterOrEqual(Level.INFO));
    }

    private String raw(String path, String body) {
        var publisher = HttpRequest.BodyPublishers.ofString(body, StandardCharsets.UTF_8);
        return http("sable-point", "POST", "/fhir" + path, "application/fhir+json", publisher)
                .body();
    }
}

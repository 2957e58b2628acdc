package dev.isoline.conformance.partner;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import dev.isoline.conformance.validator.FhirJudge;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.hl7.fhir.r4.model.Bundle;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FhirPartnerTest {

    private static final String TRANSACTION =
            """
            {"resourceType":"Bundle","type":"transaction","entry":[
             {"fullUrl":"urn:uuid:3f0e5c2e-8a3c-4a70-9d7c-0b7f9d5f8f01",
              "resource":{"resourceType":"Patient","id":"p1"},
              "request":{"method":"PUT","url":"Patient/p1"}}]}""";

    private FhirPartner partner;
    private FhirClinic clinic;

    @BeforeEach
    void start() throws IOException {
        partner = new FhirPartner();
        clinic = new FhirClinic(partner.url().replace("/fhir", ""), "clinic", "secret");
    }

    @AfterEach
    void stop() {
        partner.close();
    }

    @Test
    void a_transaction_is_kept_and_answered_entry_by_entry() throws Exception {
        Reply reply = clinic.transaction(TRANSACTION);
        assertThat(reply.status()).isEqualTo(200);
        Bundle answer =
                FhirContext.forR4Cached().newJsonParser().parseResource(Bundle.class, reply.body());
        assertThat(answer.getType()).isEqualTo(Bundle.BundleType.TRANSACTIONRESPONSE);
        assertThat(answer.getEntryFirstRep().getResponse().getLocation())
                .isEqualTo("Patient/p1/_history/1");
        assertThat(FhirJudge.one().judge("answer", reply.body()).findings()).isEmpty();
        assertThat(partner.inbox().all())
                .extracting(FhirPartner.Received::json)
                .contains(TRANSACTION);
    }

    @Test
    void what_is_no_transaction_is_refused_with_an_operation_outcome_and_not_kept()
            throws Exception {
        assertRefused(TRANSACTION.replace("\"transaction\"", "\"collection\""));
        assertRefused(TRANSACTION.replace("\"method\":\"PUT\",", ""));
        assertRefused("no json");
        assertThat(partner.inbox().all()).isEmpty();
    }

    private void assertRefused(String body) throws Exception {
        Reply reply = clinic.transaction(body);
        assertThat(reply.status()).isEqualTo(400);
        assertThat(reply.body()).contains("OperationOutcome");
    }

    @Test
    void reading_is_not_served() throws Exception {
        assertThat(clinic.search("Patient?identifier=1").status()).isEqualTo(405);
    }

    @Test
    void a_recording_appears_in_the_folder_whole_and_under_its_name(@TempDir Path folder)
            throws Exception {
        Path file = Files.writeString(folder.resolve("SP-1.zip"), "zip");
        Path watched = Files.createDirectory(folder.resolve("inbox"));
        RecorderStation.drop(file, watched);
        assertThat(watched.resolve("SP-1.zip")).hasContent("zip");
        assertThat(watched.toFile().list()).hasSize(1);
    }
}

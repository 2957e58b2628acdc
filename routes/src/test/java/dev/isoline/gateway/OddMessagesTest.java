package dev.isoline.gateway;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.isoline.resources.FhirJson;
import dev.isoline.resources.ResourceStore;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.Organization;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Every odd message of the shared collection, over MLLP, against what the collection's manifest
 * calls right. Each is sent as if by a clinic of its own: in its bytes EHR and CLINIC, which name
 * the sender and the authorities of its numbers, become names nobody else uses.
 */
class OddMessagesTest extends AssembledGateway {

    private static final AtomicInteger CLINICS = new AtomicInteger(100);

    private final String clinic = "C" + CLINICS.incrementAndGet() + "-";

    @BeforeEach
    void the_collection_is_there() {
        assumeTrue(Files.isDirectory(folder()), "The folder shared/data/hl7v2-odd is not here");
    }

    /**
     * The columns: what was sent before · MSA-1 of the answers · place and table 0357 code of each
     * error · the same of each warning that does not name something an order still lacks (101) ·
     * what is stored: patient, orders, notes, coverages.
     */
    // spotless:off
    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = ';', nullValues = "-", textBlock = """
        ok-orm.hl7               ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health
        lf-ends.hl7              ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health
        no-last-cr.hl7           ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health
        bom.hl7                  ; -      ; AA    ; -          ; MSH 100    ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health
        utf8-undeclared.hl7      ; -      ; AA    ; -          ; -          ; Müller-Łukasz Jörg M 1961-04-12, P1001 on-hold 93224
        latin1-declared.hl7      ; -      ; AA    ; -          ; -          ; Müßig Jörg M 1961-04-12, P1001 on-hold 93224
        charset-unknown.hl7      ; -      ; AR    ; MSH-18 102 ; -          ; -
        pid3-four.hl7            ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224
        pid3-noaa.hl7            ; -      ; AE    ; PID-3 101  ; -          ; -
        pid3-same-id-other-aa.hl7; ok-orm ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P0999 on-hold 93224, 1 Acme Health / Other Person M 1961-04-12, P1001 on-hold 93224
        pid5-empty.hl7           ; -      ; AE    ; PID-5 101  ; -          ; -
        pid5-null.hl7            ; ok-orm ; AA    ; -          ; -          ; 1961-04-12, P0999 on-hold 93224, 1 Acme Health
        pid5-alias-first.hl7     ; -      ; AA    ; -          ; PID-5 103  ; Berg Anna M 1961-04-12, P1001 on-hold 93224
        dob-1.hl7                ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04, P1001 on-hold 93224
        dob-3.hl7                ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224
        dob-4.hl7                ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224
        dob-5.hl7                ; -      ; AA    ; -          ; PID-7 103  ; Berg Anna M, P1001 on-hold 93224
        dob-6.hl7                ; -      ; AA    ; -          ; PID-7 103  ; Berg Anna M, P1001 on-hold 93224
        ts-dst-gap.hl7           ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224
        enc-odd.hl7              ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224
        enc-trunc27.hl7          ; -      ; AA    ; -          ; MSH-12 103 ; Berg Anna M 1961-04-12, P1001 on-hold 93224
        enc-short.hl7            ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224
        esc-ok.hl7               ; -      ; AA    ; -          ; -          ; Berg & Sons | ^ ~ \\ Anna M 1961-04-12, P1001 on-hold 93224
        esc-lone.hl7             ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224 (lead off 4\\5 times)
        esc-double.hl7           ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224 (line one<CR><LF>line two)
        esc-oddhex.hl7           ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224 (one<CR>two\\X00A\\three)
        ed-pdf-large.hl7         ; -      ; AR    ; MSH-9 200  ; -          ; -
        ed-pdf-rawcrlf.hl7       ; -      ; AE    ; OBX 100    ; -          ; -
        ed-pdf-esc-br.hl7        ; -      ; AR    ; MSH-9 200  ; -          ; -
        ed-pdf-wrong-comp.hl7    ; -      ; AR    ; MSH-9 200  ; -          ; -
        batch-count-wrong.hl7    ; -      ; AA AA ; -          ; -          ; Berg Anna M 1961-04-12, P2004 on-hold 93224 / Berg Anna M 1961-04-12, P2005 on-hold 93224
        batch-one-bad.hl7        ; -      ; AA AR AA; MSH-9 200; -          ; Berg Anna M 1961-04-12, P2006 on-hold 93224 / Berg Anna M 1961-04-12, P2007 on-hold 93224
        trunc-mid-pid.hl7        ; -      ; AE    ; ORC 100    ; -          ; -
        trunc-no-obr.hl7         ; -      ; AE    ; OBR 100    ; -          ; -
        msh-only.hl7             ; -      ; AE    ; PID 100    ; -          ; -
        z-between.hl7            ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health
        msh9-struct-wrong.hl7    ; -      ; AA    ; -          ; MSH-9 103  ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health
        msh12-empty.hl7          ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health
        msh10-empty.hl7          ; -      ; AE    ; MSH-10 101 ; -          ; -
        enh-al-ne.hl7            ; -      ; CA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health
        enh-ne-al.hl7            ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health
        adt-a40-self.hl7         ; ok-orm ; AE    ; MRG-1 103  ; -          ; Berg Anna M 1961-04-12, P0999 on-hold 93224, 1 Acme Health
        in1-two.hl7              ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health, 2 Second Mutual
        in1-nopayerid.hl7        ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health
        in1-after-obr.hl7        ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health
        omg-o19-two.hl7          ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224, P1002 on-hold 93241, 1 Acme Health
        orc-cancel.hl7           ; same   ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 revoked 93224, 1 Acme Health
        orc-xo.hl7               ; same   ; AE    ; ORC-1 103  ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health
        orc-nw-again.hl7         ; same   ; AE    ; ORC-2 205  ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health
        mllp-fs-only.bin         ; -      ; AA AE ; ORC-2 205  ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health
        mllp-no-vt.bin           ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health
        mllp-vt-inside.bin       ; -      ; AE AA ; PID 100    ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health
        mllp-empty.bin           ; -      ; AA    ; -          ; -          ; Berg Anna M 1961-04-12, P1001 on-hold 93224, 1 Acme Health
        """)
    // spotless:on
    void is_answered_and_stored(
            String file, String before, String codes, String errors, String flags, String stored) {
        if (before != null) {
            String order = latin1(bytes("ok-orm.hl7"));
            mllp(before.equals("same") ? order : order.replace("P1001", "P0999"));
        }
        var answer = send(file, file.startsWith("mllp-") ? codes.split(" ").length : 1);
        assertThat(answer.code()).isEqualTo(codes);
        assertThat(String.join(", ", answer.errors())).isEqualTo(errors == null ? "" : errors);
        assertThat(answer.warnings().stream().filter(w -> !w.endsWith(" 101")))
                .isEqualTo(flags == null ? List.of() : List.of(flags));
        assertThat(stored()).isEqualTo(stored == null ? "" : stored);
    }

    @Test
    void every_file_of_the_collection_has_a_row() throws Exception {
        var rows =
                getClass()
                        .getDeclaredMethod(
                                "is_answered_and_stored",
                                String.class,
                                String.class,
                                String.class,
                                String.class,
                                String.class,
                                String.class)
                        .getAnnotation(CsvSource.class)
                        .textBlock();
        Set<String> named =
                rows.lines()
                        .map(row -> row.split(";")[0].strip())
                        .collect(Collectors.toCollection(TreeSet::new));
        named.add("mllp-half.bin");
        try (Stream<Path> files = Files.list(folder())) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .filteredOn(name -> !name.equals("manifest.tsv"))
                    .containsExactlyInAnyOrderElementsOf(named);
        }
    }

    @Test
    void a_frame_that_never_ends_frees_its_connection_and_stores_nothing() {
        assertThat(Wire.secondsUntilClosed(MLLP, bytes("mllp-half.bin"))).isBetween(2.0, 10.0);
        assertThat(stored()).isEmpty();
    }

    @Test
    void all_identifiers_of_a_patient_are_kept_but_the_empty_one() {
        send("pid3-four.hl7", 1);
        assertThat(all(Patient.class).get(0).getIdentifier())
                .extracting(i -> i.getSystem().replaceAll(".*/", "") + " " + i.getValue())
                .containsExactly(
                        "urn:oid:2.999.1.1 4711",
                        "STATE 888-12",
                        "urn:oid:2.999.7 99",
                        clinic + "2 4712");
    }

    @Test
    void the_legal_name_is_the_official_one_and_the_alias_is_kept() {
        send("pid5-alias-first.hl7", 1);
        assertThat(all(Patient.class).get(0).getName())
                .extracting(n -> n.getUse() + " " + n.getFamily())
                .containsExactlyInAnyOrder("OFFICIAL Berg", "null Annie");
    }

    @Test
    void a_truncation_character_in_the_data_is_text() {
        send("enc-trunc27.hl7", 1);
        assertThat(all(Patient.class).get(0).getAddressFirstRep().getLine().get(0).getValue())
                .isEqualTo("Apt #5 Main St");
    }

    @Test
    void an_answer_uses_the_delimiters_of_its_message() {
        assertThat(send("enc-odd.hl7", 1).text()).startsWith("MSH^!%\\&^GATEWAY^ECGSVC^");
    }

    @Test
    void an_answer_does_not_invent_a_control_id() {
        assertThat(send("msh10-empty.hl7", 1).answersControlId()).isEmpty();
    }

    @Test
    void a_batch_that_does_not_count_right_is_told_so() {
        assertThat(send("batch-count-wrong.hl7", 1).segments("BTS"))
                .singleElement()
                .asString()
                .startsWith("BTS|2|BTS-1 does not match");
    }

    /** docs/mappings/ts-to-datetime.md: by the offset that was in force before the gap. */
    @Test
    void a_time_in_the_gap_of_the_clocks_keeps_its_moment() {
        send("ts-dst-gap.hl7", 1);
        assertThat(all(ServiceRequest.class).get(0).getAuthoredOn().toInstant())
                .isEqualTo("2026-03-29T01:30:00Z");
    }

    /** All answers of one file as one text. */
    private Answer send(String file, int answers) {
        byte[] bytes = bytes(file);
        byte[] stream = file.endsWith(".bin") ? bytes : Wire.frame(bytes);
        return Answer.of(String.join("", Wire.exchange(MLLP, stream, answers)));
    }

    /** This clinic's patients, each with orders and insurance. */
    private String stored() {
        return all(Patient.class).stream()
                .map(this::stored)
                .sorted()
                .collect(Collectors.joining(" / "));
    }

    private String stored(Patient patient) {
        String reference = "Patient/" + patient.getIdElement().getIdPart();
        var person =
                Stream.of(
                                patient.getNameFirstRep().getFamily(),
                                patient.getNameFirstRep().getGivenAsSingleString(),
                                patient.getBirthDateElement().getValueAsString())
                        .filter(part -> part != null && !part.isEmpty())
                        .collect(Collectors.joining(" "));
        var orders =
                all(ServiceRequest.class).stream()
                        .filter(o -> o.getSubject().getReference().equals(reference))
                        .map(OddMessagesTest::stored)
                        .sorted();
        var coverages =
                ledger
                        .read(t -> ResourceStore.search(t, Coverage.class, List.of(), 0, 5_000))
                        .stream()
                        .filter(c -> c.getBeneficiary().getReference().equals(reference))
                        .map(this::stored)
                        .sorted();
        return Stream.of(Stream.of(person), orders, coverages)
                .flatMap(part -> part)
                .collect(Collectors.joining(", "));
    }

    private static String stored(ServiceRequest order) {
        String notes =
                order.getNote().stream()
                        .map(n -> " (" + n.getText() + ")")
                        .collect(Collectors.joining());
        return order.getIdentifierFirstRep().getValue()
                + " "
                + order.getStatus().toCode()
                + " "
                + order.getCode().getCodingFirstRep().getCode()
                + notes.replace("\r", "<CR>").replace("\n", "<LF>");
    }

    private String stored(Coverage coverage) {
        String payor = coverage.getPayorFirstRep().getReferenceElement().getIdPart();
        return coverage.getOrder()
                + " "
                + ledger.read(t -> ResourceStore.get(t, Organization.class, payor))
                        .orElseThrow()
                        .getName();
    }

    /** Resources whose identifiers are of this clinic. */
    private <R extends Resource> List<R> all(Class<R> type) {
        String name = type == ServiceRequest.class ? clinic.replace('C', 'E') : clinic;
        return ledger.read(t -> ResourceStore.search(t, type, List.of(), 0, 5_000)).stream()
                .filter(r -> FhirJson.encode(r).contains(name))
                .toList();
    }

    private byte[] bytes(String file) {
        try {
            return latin1(Files.readAllBytes(folder().resolve(file)))
                    .replace("CLINIC", clinic)
                    .replace("EHR", clinic.replace('C', 'E'))
                    .getBytes(StandardCharsets.ISO_8859_1);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String latin1(byte[] bytes) {
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }

    private static Path folder() {
        String shared = System.getenv().getOrDefault("ISOLINE_SHARED", "../../shared");
        return Path.of(shared, "data", "hl7v2-odd");
    }
}

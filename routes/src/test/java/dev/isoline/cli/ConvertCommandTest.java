package dev.isoline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Tag;
import dev.isoline.fhirdicom.ServiceRequestToOrderContext;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Practitioner;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code isoline convert} on real files. */
class ConvertCommandTest {

    private static final String ORDER =
            """
            {"resourceType": "Bundle", "type": "collection", "entry": [
              {"resource": {"resourceType": "ServiceRequest", "id": "o", "identifier": [
                {"type": {"coding": [{"system": "%1$s", "code": "PLAC"}]},
                 "system": "urn:oid:2.999.10.5", "value": "P-77"},
                {"type": {"coding": [{"system": "%1$s", "code": "ACSN"}]}, "value": "A1001"}],
                "code": {"coding": [{"system": "http://loinc.org", "code": "18754-2"}],
                         "text": "Holter"},
                "subject": {"reference": "Patient/p"}, "requester": {"reference": "Practitioner/q"}}},
              {"resource": {"resourceType": "Patient", "id": "p", "identifier": [
                {"type": {"coding": [{"system": "%1$s", "code": "MR"}]},
                 "system": "urn:oid:2.999.10.1", "value": "4711",
                 "assigner": {"display": "Harrow Bay Clinic"}}],
                "name": [{"family": "Other"},
                         {"use": "official", "family": "Berg", "given": ["Anna", "M"]}],
                "gender": "female", "birthDate": "1961-04-12"}},
              {"resource": {"resourceType": "Practitioner", "id": "q",
                "name": [{"family": "Hill", "given": ["Robert"], "prefix": ["Dr"]}]}}]}
            """
                    .formatted("http://terminology.hl7.org/CodeSystem/v2-0203");

    @TempDir Path folder;

    private final ByteArrayOutputStream errors = new ByteArrayOutputStream();
    private Path order;

    @BeforeEach
    void a_record_of_ten_seconds() throws IOException {
        order = Files.writeString(folder.resolve("order.json"), ORDER);
        Path record = Files.createDirectories(folder.resolve("record"));
        Files.writeString(
                record.resolve("r.hea"),
                "r 1 200 2000 09:30:00 24/10/2026\nr.dat 16 200 16 0 0 0 0 II\n");
        Files.write(record.resolve("r.dat"), new byte[4000]);
    }

    private int convert(String recording) {
        return execute(
                folder.resolve(recording).toString(),
                "--order",
                order.toString(),
                "--out=" + folder.resolve("out"));
    }

    private int execute(String... words) {
        var silent = new PrintStream(OutputStream.nullOutputStream());
        return new ConvertCommand(silent, new PrintStream(errors)).execute(words);
    }

    @Test
    void a_record_becomes_one_object_of_its_order() throws IOException {
        assertThat(convert("record/r.hea")).as(errors.toString()).isZero();
        List<Path> objects;
        try (Stream<Path> files = Files.list(folder.resolve("out"))) {
            objects = files.toList();
        }
        assertThat(objects).hasSize(1);
        try (var channel = FileChannel.open(objects.get(0))) {
            var object = Part10.read(channel, ReadLimits.DEFAULT).dataSet();
            assertThat(object.text(Tag.PatientName)).contains("Berg^Anna^M");
            assertThat(object.text(Tag.AccessionNumber)).contains("A1001");
            assertThat(object.item(Tag.WaveformSequence).orElseThrow().bytes(Tag.WaveformData))
                    .hasSize(4000);
        }
    }

    /** PS3.3 C.10.10: an annotation of free text. */
    @Test
    void a_salvaged_recording_says_so_in_its_object() throws IOException {
        Files.write(folder.resolve("record/r.dat"), new byte[1000]);
        assertThat(convert("record/r.hea")).isEqualTo(1);
        assertThat(errors.toString()).contains("3000 of 4000 bytes are missing");
        var words = new String[] {"--salvage", "--order", order.toString(), "--out"};
        var all = new ArrayList<>(List.of(words));
        all.add(folder.resolve("out").toString());
        all.add(folder.resolve("record/r.hea").toString());
        assertThat(execute(all.toArray(String[]::new))).as(errors.toString()).isZero();
        try (Stream<Path> files = Files.list(folder.resolve("out"));
                var channel = FileChannel.open(files.findFirst().orElseThrow())) {
            var object = Part10.read(channel, ReadLimits.DEFAULT).dataSet();
            var annotation = object.item(Tag.WaveformAnnotationSequence).orElseThrow();
            assertThat(annotation.text(Tag.UnformattedTextValue).orElseThrow())
                    .startsWith("Salvaged: ")
                    .contains("3000 of 4000 bytes are missing");
        }
    }

    /** PS3.3 A.45.1; a PDF file is known by its first bytes, ISO 32000-1 7.5.2. */
    @Test
    void a_report_in_pdf_becomes_an_encapsulated_pdf_in_the_study_of_the_order()
            throws IOException {
        Files.writeString(folder.resolve("report.bin"), "%PDF-1.4\n%%EOF\n");
        assertThat(convert("report.bin")).as(errors.toString()).isZero();
        try (Stream<Path> files = Files.list(folder.resolve("out"));
                var channel = FileChannel.open(files.findFirst().orElseThrow())) {
            var object = Part10.read(channel, ReadLimits.DEFAULT).dataSet();
            assertThat(object.text(Tag.SOPClassUID)).contains("1.2.840.10008.5.1.4.1.1.104.1");
            assertThat(object.text(Tag.StudyInstanceUID))
                    .contains(OrderFile.read(order).studyUid());
            assertThat(object.text(Tag.DocumentTitle)).contains("Holter");
            assertThat(object.integer(Tag.EncapsulatedDocumentLength)).contains(15L);
        }
    }

    /** The light reader and the mapper on HAPI's model are two ways to the same facts. */
    @Test
    void the_order_file_gives_what_the_fhir_mapper_gives() throws IOException {
        var bundle = FhirContext.forR4Cached().newJsonParser().parseResource(Bundle.class, ORDER);
        var resources = bundle.getEntry();
        assertThat(OrderFile.read(order))
                .isEqualTo(
                        ServiceRequestToOrderContext.map(
                                (ServiceRequest) resources.get(0).getResource(),
                                (Patient) resources.get(1).getResource(),
                                (Practitioner) resources.get(2).getResource()));
    }

    @Test
    void a_recording_that_is_not_there_is_a_fault_of_the_command_line() {
        assertThat(convert("nothing.edf")).isEqualTo(2);
        assertThat(errors.toString()).contains("does not exist").hasLineCount(1);
    }

    @Test
    void an_order_that_is_no_json_or_no_order_is_told_in_a_sentence() throws IOException {
        Files.writeString(order, "MSH|^~\\&|");
        assertThat(convert("record/r.hea")).isEqualTo(1);
        Files.writeString(order, "{\"resourceType\": \"Bundle\"}");
        assertThat(convert("record/r.hea")).isEqualTo(1);
        assertThat(errors.toString().lines())
                .containsExactly(
                        "isoline: Bundle: The order file is not JSON.",
                        "isoline: Bundle.entry: The order file has 0 resources of type"
                                + " ServiceRequest instead of one.");
    }

    @Test
    void a_text_named_edf_is_told_in_a_sentence() throws IOException {
        Files.writeString(folder.resolve("a.edf"), "hello\n");
        assertThat(convert("a.edf")).isEqualTo(1);
        assertThat(errors.toString()).hasLineCount(1).contains("text");
    }

    @Test
    void a_command_line_at_fault_is_told_in_a_sentence_before_the_usage() {
        assertThat(execute("r.hea", "--order", "o.json")).isEqualTo(2);
        assertThat(execute("r.hea", "--order=o.json", "--out")).isEqualTo(2);
        assertThat(execute("r.hea", "--output", "x")).isEqualTo(2);
        assertThat(execute("r.hea", "s.hea")).isEqualTo(2);
        assertThat(execute("r", "--order=o", "--out=x", "--zone=Harrow/Bay")).isEqualTo(2);
        assertThat(errors.toString().lines().filter(line -> line.startsWith("isoline: ")))
                .containsExactly(
                        "isoline: --out is missing.",
                        "isoline: The option --out needs a value.",
                        "isoline: There is no option --output.",
                        "isoline: RECORDING is given twice.",
                        "isoline: The time zone or the start cannot be read: Unknown time-zone ID:"
                                + " Harrow/Bay.");
    }
}

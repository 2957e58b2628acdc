package dev.isoline.conformance.cli;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.conformance.IndependentReader;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class CheckCommandTest {

    private static final String RIGHT =
            "MSH|^~\\&|A|B|C|D|20261124230000||ACK^A01^ACK|1|P|2.5.1\rMSA|AA|2\r";

    @TempDir private Path folder;

    private final StringWriter out = new StringWriter();

    @Test
    void a_right_file_is_ok_and_a_wrong_one_makes_exit_1() throws Exception {
        assertThat(check(file("right.hl7", RIGHT))).isZero();
        assertThat(out.toString()).startsWith("ok ");
        assertThat(check(file("wrong.hl7", RIGHT.replace("MSA|AA|2", "MSA||2")))).isEqualTo(1);
        assertThat(out.toString()).contains("error: MSA-1: required field is empty");
    }

    @Test
    void the_kind_is_told_by_content_not_by_name() throws Exception {
        assertThat(check(file("right.json", RIGHT))).isZero();
        assertThat(check(file("notes.hl7", "just notes"))).isEqualTo(1);
        assertThat(out.toString()).contains("neither HL7 v2, FHIR JSON nor DICOM");
    }

    @Test
    void a_file_that_is_not_there_is_a_fault_of_the_command_line() {
        assertThat(check("nowhere.hl7")).isEqualTo(2);
    }

    @Test
    void json_and_junit_say_the_same() throws Exception {
        String wrong = file("wrong.hl7", RIGHT.replace("MSA|AA|2", "MSA|AA"));
        check("--format", "json", wrong);
        assertThat(out.toString()).contains("\"place\" : \"MSA-2\"");
        check("--format", "junit", wrong);
        assertThat(out.toString())
                .contains("failures=\"1\"")
                .contains("<failure message=\"error: MSA-2: required field is empty\"");
    }

    @Test
    void a_dicom_object_without_its_modules_is_wrong() throws Exception {
        IndependentReader.needs("pydicom, numpy");
        Path dcm = folder.resolve("empty.dcm");
        // a Part 10 file that claims to be a General ECG and holds nothing else (PS3.10 7.1)
        IndependentReader.run("write_empty_ecg.py", dcm);
        assertThat(check(dcm.toString())).isEqualTo(1);
        assertThat(out.toString()).contains("no multiplex group");
    }

    private String file(String name, String text) throws Exception {
        return Files.writeString(folder.resolve(name), text).toString();
    }

    private int check(String... arguments) {
        var command = new CommandLine(new CheckCommand());
        command.setOut(new PrintWriter(out, true));
        command.setErr(new PrintWriter(new StringWriter()));
        return command.execute(arguments);
    }
}

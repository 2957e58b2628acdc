package dev.isoline.dicom.json;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.ReadLimits;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is no JSON (RFC 8259), no DICOM JSON (PS3.18 F.2) or too much is refused with a reason. */
class HostileJsonTest {

    private static void refused(String json, String message) {
        assertThatThrownBy(() -> DicomJsonTest.read(json))
                .isInstanceOf(DicomException.class)
                .hasMessageContaining(message);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "{",
                "[",
                "{]",
                "{\"a\"}",
                "{\"a\":}",
                "{,}",
                "[1,]",
                "[1 2]",
                "[01]",
                "[1.]",
                "[+1]",
                "[.5]",
                "[1e]",
                "[NaN]",
                "[tru]",
                "[\"\\x\"]",
                "[\"\\u12G4\"]",
                "[\"a\nb\"]",
                "[\"a",
                "{} {}",
                "{\"a\":1,\"a\":2}",
                "'a'",
                "[1]x",
                "[--1]"
            })
    void what_is_no_json(String json) {
        refused(json, "The JSON ");
    }

    @Test
    void bytes_that_are_not_utf_8() {
        byte[] latin =
                "{\"00100020\":{\"vr\":\"LO\",\"Value\":[\"ü\"]}}"
                        .getBytes(StandardCharsets.ISO_8859_1);
        assertThatThrownBy(
                        () ->
                                DicomJsonReader.read(
                                        new ByteArrayInputStream(latin),
                                        ReadLimits.DEFAULT,
                                        BulkDataSource.NONE))
                .hasMessage("The JSON is not UTF-8.");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "{\"vr\":\"LO\",\"Value\":\"x\"}; has a Value that is no array",
                "{\"Value\":[\"x\"]}; has no vr",
                "{\"vr\":\"lo\",\"Value\":[\"x\"]}; has a vr that PS3.5 does not know",
                "{\"vr\":\"LO\",\"Value\":[1]}; is not a string",
                "{\"vr\":\"LO\",\"Value\":[\"a\\\\b\"]}; has a backslash in a value",
                "{\"vr\":\"PN\",\"Value\":[\"A^B\"]}; is not a person name object",
                "{\"vr\":\"PN\",\"Value\":[{\"Alphabetic\":\"A=B\"}]}; is not a person name",
                "{\"vr\":\"ST\",\"Value\":[\"a\",\"b\"]}; its vr takes one",
                "{\"vr\":\"US\",\"Value\":[65536]}; has a number outside 0 to 65535",
                "{\"vr\":\"US\",\"Value\":[1.5]}; is not an integer",
                "{\"vr\":\"US\",\"Value\":[null]}; is not a number",
                "{\"vr\":\"IS\",\"Value\":[1e999999999]}; is not an integer",
                "{\"vr\":\"FL\",\"Value\":[1e39]}; is not a number FL can hold",
                "{\"vr\":\"FD\",\"Value\":[1e309]}; is not a number FD can hold",
                "{\"vr\":\"UV\",\"Value\":[-1]}; is not an unsigned integer of 64 bits",
                "{\"vr\":\"AT\",\"Value\":[\"1\"]}; is not a tag of 8 hex digits",
                "{\"vr\":\"OW\",\"Value\":[1]}; takes InlineBinary",
                "{\"vr\":\"OW\",\"InlineBinary\":\"A\"}; is not base64",
                "{\"vr\":\"LO\",\"InlineBinary\":\"AA==\"}; not for its vr",
                "{\"vr\":\"LO\",\"BulkDataURI\":\"x\"}; not for its vr",
                "{\"vr\":\"OW\",\"InlineBinary\":\"\",\"BulkDataURI\":\"x\"}; more than one of",
                "{\"vr\":\"SQ\",\"Value\":[1]}; where a data set is expected",
                "7; is no object"
            })
    void what_is_no_attribute(String attribute, String message) {
        refused("{\"00291001\":" + attribute + "}", message);
    }

    @Test
    void what_is_no_data_set() {
        refused("[]", "where a data set is expected");
        refused("{\"PatientID\":{\"vr\":\"LO\"}}", "not a tag of 8 hex digits");
        refused("{\"FFFEE000\":{\"vr\":\"UN\"}}", "not a tag of 8 hex digits");
        refused("{\"0010002a\":{\"vr\":\"LO\"},\"0010002A\":{\"vr\":\"LO\"}}", "stands twice");
    }

    @Test
    void endless_nesting() {
        refused("[".repeat(1_000_000), "is nested too deep");
        refused("{\"00400555\":{\"vr\":\"SQ\",\"Value\":[".repeat(100_000), "is nested too deep");
    }

    @Test
    void too_many_values_and_too_much_text() {
        String items = "{\"00400555\":{\"vr\":\"SQ\",\"Value\":[" + "{},".repeat(300);
        assertThatThrownBy(
                        () ->
                                DicomJsonReader.read(
                                        new ByteArrayInputStream(items.getBytes()),
                                        new ReadLimits(9, 200, 1000, 1 << 20),
                                        BulkDataSource.NONE))
                .hasMessageContaining("has more than 200 objects and arrays");
        refused(
                "{\"00291001\":{\"vr\":\"US\",\"Value\":[" + "1,".repeat(300_000),
                "bytes held in memory");
        refused(
                "{\"00291001\":{\"vr\":\"LO\",\"Value\":[\"" + "x".repeat(20 << 20),
                "bytes held in memory");
        refused(
                "{\"00291001\":{\"vr\":\"DS\",\"Value\":[" + "1".repeat(65),
                "more than 64 characters");
    }
}

package dev.isoline.dicom.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.dicom.BulkValue;
import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Samples;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.Value;
import dev.isoline.dicom.Vr;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.WritableByteChannel;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** PS3.18 annex F (F.2.2 as of 2025e, F.2.3 as of 2024c). */
class DicomJsonTest {

    private static final int PRIVATE = 0x0029_1001;

    static String json(DataSet dataSet) throws IOException {
        var out = new ByteArrayOutputStream();
        new DicomJsonWriter(out, BulkDataNames.NONE).write(dataSet);
        return out.toString(StandardCharsets.UTF_8);
    }

    static DataSet read(String json) throws IOException {
        return DicomJsonReader.read(bytes(json), ReadLimits.DEFAULT, BulkDataSource.NONE);
    }

    private static ByteArrayInputStream bytes(String json) {
        return new ByteArrayInputStream(json.getBytes(StandardCharsets.UTF_8));
    }

    /** Writes the attribute and reads it back. */
    private static void agree(DataSet dataSet, String json) throws IOException {
        assertThat(json(dataSet)).isEqualTo(json);
        assertThat(read(json)).isEqualTo(dataSet);
    }

    /** F.2.2: eight upper-case hex digits in ascending order, vr, Value. */
    @Test
    void attributes_are_named_by_their_tag_in_ascending_order() throws IOException {
        agree(
                new DataSet()
                        .putText(Tag.PatientID, "12345")
                        .putText(Tag.AcquisitionDateTime, "20130409")
                        .putInts(0x7FE0_0001, Vr.OV, new long[0]),
                "{\"0008002A\":{\"vr\":\"DT\",\"Value\":[\"20130409\"]},"
                        + "\"00100020\":{\"vr\":\"LO\",\"Value\":[\"12345\"]},"
                        + "\"7FE00001\":{\"vr\":\"OV\"}}");
    }

    /** F.2.2 and F.2.5: items are objects, an empty one is {}, an empty sequence has no Value. */
    @Test
    void sequences_are_arrays_of_objects() throws IOException {
        var item = new DataSet().putText(Tag.CodeValue, "2:1");
        agree(
                new DataSet().putItems(Tag.ChannelSourceSequence, List.of(item, new DataSet())),
                "{\"003A0208\":{\"vr\":\"SQ\",\"Value\":["
                        + "{\"00080100\":{\"vr\":\"SH\",\"Value\":[\"2:1\"]}},{}]}}");
        agree(
                new DataSet().putItems(Tag.AcquisitionContextSequence, List.of()),
                "{\"00400555\":{\"vr\":\"SQ\"}}");
    }

    /** F.2.2: the component groups that are not empty. */
    @Test
    void a_person_name_is_an_object_of_component_groups() throws IOException {
        agree(
                new DataSet().putText(Tag.PatientName, "Wang^XiaoDong=王^小東"),
                "{\"00100010\":{\"vr\":\"PN\",\"Value\":[{\"Alphabetic\":\"Wang^XiaoDong\","
                        + "\"Ideographic\":\"王^小東\"}]}}");
        agree(
                new DataSet().putText(Tag.OperatorsName, "==やまだ^たろう", "", "A^B"),
                "{\"00081070\":{\"vr\":\"PN\",\"Value\":[{\"Phonetic\":\"やまだ^たろう\"},null,"
                        + "{\"Alphabetic\":\"A^B\"}]}}");
    }

    /** F.2.5: vr alone where there is no value, null for an empty one among others. */
    @Test
    void empty_values() throws IOException {
        agree(new DataSet().putEmpty(Tag.PatientBirthDate), "{\"00100030\":{\"vr\":\"DA\"}}");
        agree(
                new DataSet().putText(Tag.SoftwareVersions, "1.0", "", "b"),
                "{\"00181020\":{\"vr\":\"LO\",\"Value\":[\"1.0\",null,\"b\"]}}");
        assertThat(json(new DataSet().putText(Tag.PatientID, "  ")))
                .isEqualTo("{\"00100020\":{\"vr\":\"LO\"}}");
        assertThat(read("{\"00100020\":{\"vr\":\"LO\",\"Value\":[]}}").hasValue(Tag.PatientID))
                .isFalse();
    }

    /** Table F.2.3-1 and its note: what a number cannot say stays a string. */
    @ParameterizedTest
    @CsvSource({
        "DS, 4.88281, 4.88281",
        "DS, -1.50E+3, -1.50E+3",
        "DS, +1, '\"+1\"'",
        "DS, .5, '\".5\"'",
        "DS, 007, '\"007\"'",
        "IS, 12, 12",
        "IS, -0, -0",
        "IS, +12, '\"+12\"'",
        "LO, 12, '\"12\"'"
    })
    void decimal_and_integer_strings(Vr vr, String text, String value) throws IOException {
        agree(
                new DataSet().putText(0x0029_1001, vr, text),
                "{\"00291001\":{\"vr\":\"%s\",\"Value\":[%s]}}".formatted(vr, value));
    }

    @ParameterizedTest
    @CsvSource({
        "DS, 0.30000000000000004, 0.3",
        "DS, 1e-7, 1e-7",
        "DS, '\" 2.5\"', 2.5",
        "IS, 12.0, 12",
        "IS, 3e2, 300",
        "IS, '\"7\"', 7"
    })
    void numbers_of_other_writers(Vr vr, String value, String text) throws IOException {
        DataSet dataSet =
                read("{\"00291001\":{\"vr\":\"%s\",\"Value\":[%s]}}".formatted(vr, value));
        assertThat(dataSet.putText(0x0029_0010, "X").element(0x0029_1001).orElseThrow().vr())
                .isEqualTo(vr);
        assertThat(new String(dataSet.bytes(0x0029_1001), StandardCharsets.US_ASCII).strip())
                .isEqualTo(text);
    }

    @Test
    void binary_numbers() throws IOException {
        agree(
                new DataSet().putNumbers(PRIVATE, Vr.FL, 0.1f, -1e10f),
                attribute("FL", "0.1,-1.0E10"));
        agree(
                new DataSet().putNumbers(PRIVATE, Vr.FD, 0.1, -2, 1e300),
                attribute("FD", "0.1,-2.0,1.0E300"));
        agree(new DataSet().putInts(PRIVATE, Vr.US, 0, 65535), attribute("US", "0,65535"));
        agree(new DataSet().putInts(PRIVATE, Vr.SS, -32768), attribute("SS", "-32768"));
        agree(new DataSet().putInts(PRIVATE, Vr.UL, 4294967295L), attribute("UL", "4294967295"));
        agree(new DataSet().putInts(PRIVATE, Vr.SL, -2147483648), attribute("SL", "-2147483648"));
    }

    /** Note of table F.2.3-1: a string where a number would lose precision. */
    @Test
    void sixty_four_bit_integers() throws IOException {
        agree(
                new DataSet().putInts(PRIVATE, Vr.SV, 5, Long.MIN_VALUE),
                attribute("SV", "5,\"-9223372036854775808\""));
        agree(
                new DataSet().putInts(PRIVATE, Vr.UV, 5, -1),
                attribute("UV", "5,\"18446744073709551615\""));
        assertThat(read(attribute("UV", "18446744073709551615")).ints(PRIVATE))
                .containsExactly(-1L);
    }

    private static String attribute(String vr, String values) {
        return "{\"00291001\":{\"vr\":\"%s\",\"Value\":[%s]}}".formatted(vr, values);
    }

    /** Table F.2.3-1: eight hex digits. */
    @Test
    void an_attribute_tag_is_hex() throws IOException {
        agree(
                new DataSet().putInts(0x0020_9165, 0x5400_0100, 0x0010_0010),
                "{\"00209165\":{\"vr\":\"AT\",\"Value\":[\"54000100\",\"00100010\"]}}");
    }

    /** F.2.7: base64 (RFC 4648) of the whole value field, padding included. */
    @Test
    void bytes_are_base64() throws IOException {
        agree(
                new DataSet().putBytes(Tag.WaveformData, Vr.OW, new byte[] {0, -128, -1, 127}),
                "{\"54001010\":{\"vr\":\"OW\",\"InlineBinary\":\"AID/fw==\"}}");
        assertThat(json(new DataSet().putBytes(Tag.WaveformData, Vr.OB, new byte[] {1, 2, 3})))
                .isEqualTo("{\"54001010\":{\"vr\":\"OB\",\"InlineBinary\":\"AQIDAA==\"}}");
    }

    /** A bulk value of any length is streamed through a small buffer. */
    @Test
    void bulk_in_line_is_streamed() throws IOException {
        var pattern = new Pattern(100_001);
        DataSet back = read(json(new DataSet().putBulk(Tag.WaveformData, Vr.OW, pattern)));
        byte[] bytes = back.bytes(Tag.WaveformData);
        assertThat(bytes).hasSize(100_002);
        assertThat(bytes[99_999]).isEqualTo((byte) 99_999);
        assertThat(bytes[100_001]).isZero();
    }

    private record Pattern(long length) implements BulkValue {

        @Override
        public void writeTo(WritableByteChannel target) throws IOException {
            for (int i = 0; i < length; i++) {
                target.write(ByteBuffer.wrap(new byte[] {(byte) i}));
            }
        }
    }

    /** F.2.6. */
    @Test
    void bulk_may_be_named_by_a_uri() throws IOException {
        var out = new ByteArrayOutputStream();
        BulkDataNames names =
                e -> e.tag() == Tag.WaveformData ? Optional.of("bulk/1") : Optional.empty();
        new DicomJsonWriter(out, names)
                .write(new DataSet().putBulk(Tag.WaveformData, Vr.OW, new Pattern(10)));
        String json = "{\"54001010\":{\"vr\":\"OW\",\"BulkDataURI\":\"bulk/1\"}}";
        assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo(json);
        DataSet back =
                DicomJsonReader.read(
                        bytes(json),
                        ReadLimits.DEFAULT,
                        (tag, uri) -> new Pattern(uri.equals("bulk/1") ? 10 : 0));
        assertThat(back.element(Tag.WaveformData).orElseThrow().value())
                .isEqualTo(new Value.Bulk(new Pattern(10)));
        assertThatThrownBy(() -> read(json))
                .hasMessage(
                        "(5400,1010) Waveform Data is a BulkDataURI, which is not accepted here");
    }

    /** RFC 8259 section 7. */
    @Test
    void strings_are_escaped() throws IOException {
        String text = "\"a\\b\"\r\n\t/\u0001\ud83d\ude00";
        var dataSet = new DataSet().putText(Tag.UnformattedTextValue, text);
        agree(
                dataSet,
                "{\"00700006\":{\"vr\":\"ST\",\"Value\":[\"\\\"a\\\\b\\\"\\r\\n\\t/\\u0001\ud83d\ude00\"]}}");
        assertThat(
                        read("{\"00700006\":{\"vr\":\"ST\",\"Value\":[\"\\ud83d\\ude00\\/\\u00FC\"]}}")
                                .text(Tag.UnformattedTextValue))
                .contains("\ud83d\ude00/ü");
    }

    /** F.2.1: several data sets are one array. */
    @Test
    void several_data_sets_are_an_array() throws IOException {
        var one = new DataSet().putText(Tag.PatientID, "1");
        var out = new ByteArrayOutputStream();
        new DicomJsonWriter(out, BulkDataNames.NONE).write(List.of(one, new DataSet()));
        String json = out.toString(StandardCharsets.UTF_8);
        assertThat(json).isEqualTo("[{\"00100020\":{\"vr\":\"LO\",\"Value\":[\"1\"]}},{}]");
        assertThat(DicomJsonReader.readAll(bytes(json), ReadLimits.DEFAULT, BulkDataSource.NONE))
                .containsExactly(one, new DataSet());
    }

    /** F.2.2 note 3: (0008,0005) is of the data set, the JSON is UTF-8. */
    @Test
    void specific_character_set_passes_unchanged() throws IOException {
        agree(
                new DataSet()
                        .putText(Tag.SpecificCharacterSet, "ISO_IR 100")
                        .putText(Tag.PatientName, "Grün"),
                "{\"00080005\":{\"vr\":\"CS\",\"Value\":[\"ISO_IR 100\"]},"
                        + "\"00100010\":{\"vr\":\"PN\",\"Value\":[{\"Alphabetic\":\"Grün\"}]}}");
    }

    @Test
    void members_may_come_in_any_order_and_group_lengths_are_dropped() throws IOException {
        DataSet dataSet =
                read(
                        " { \"54001010\" : {\"Value\":[], \"vr\":\"OW\"},\n \"00100000\":{\"vr\":\"UL\",\"Value\":[8]},"
                                + "\"00100020\":{\"Value\":[\"1\"],\"vr\":\"LO\"}}\r\n");
        assertThat(dataSet).hasToString("[(0010,0020), (5400,1010)]");
    }

    @Test
    void everything_comes_back() throws IOException {
        DataSet dataSet = Samples.everything();
        assertThat(read(json(dataSet))).isEqualTo(dataSet);
    }

    @Test
    void what_json_has_no_number_for_is_refused() throws DicomException {
        var dataSet = new DataSet().putNumbers(0x0018_9461, Vr.FD, Double.NaN);
        assertThatThrownBy(() -> json(dataSet))
                .hasMessageEndingWith("is no number that JSON can say");
    }
}

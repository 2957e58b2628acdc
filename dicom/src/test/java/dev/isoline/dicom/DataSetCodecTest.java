package dev.isoline.dicom;

import static dev.isoline.dicom.TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
import static dev.isoline.dicom.TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** PS3.5 chapters 6 and 7: what the bytes of a data set are. */
class DataSetCodecTest {

    private static final HexFormat HEX = HexFormat.of();

    @TempDir Path folder;

    private String written(TransferSyntax syntax, DataSet dataSet) throws IOException {
        return HEX.formatHex(Files10.bytes(folder, syntax, dataSet));
    }

    private DataSet read(TransferSyntax syntax, String hex) throws IOException {
        return Files10.read(folder, syntax, HEX.parseHex(hex.replace(" ", "")));
    }

    /** PS3.5 7.1.2 table 7.1-2 and 6.2: short form, 16-bit length, UI padded with NUL. */
    @Test
    void a_uid_of_odd_length_is_padded_with_nul() throws IOException {
        var dataSet = new DataSet().putText(Tag.StudyInstanceUID, "2.25.1.");
        assertThat(written(EXPLICIT_VR_LITTLE_ENDIAN, dataSet))
                .isEqualTo("20000d00" + "5549" + "0800" + "322e32352e312e00");
    }

    /** PS3.5 7.1.3 table 7.1-3: no VR, 32-bit length; 6.2: text padded with a space. */
    @Test
    void text_of_odd_length_is_padded_with_a_space() throws IOException {
        var dataSet = new DataSet().putText(Tag.PatientID, "A12");
        assertThat(written(IMPLICIT_VR_LITTLE_ENDIAN, dataSet))
                .isEqualTo("10002000" + "04000000" + "41313220");
    }

    /** PS3.5 7.1.2 table 7.1-1: two reserved bytes and a 32-bit length. */
    @Test
    void bytes_of_odd_length_are_padded_and_have_the_long_form() throws IOException {
        var dataSet = new DataSet().putBytes(Tag.WaveformData, Vr.OB, new byte[] {1, 2, 3});
        assertThat(written(EXPLICIT_VR_LITTLE_ENDIAN, dataSet))
                .isEqualTo("00541010" + "4f42" + "0000" + "04000000" + "01020300");
    }

    /** PS3.5 7.5 table 7.5-1: items with defined lengths. */
    @Test
    void a_sequence_is_written_with_defined_lengths() throws IOException {
        var item = new DataSet().putInts(Tag.NumberOfWaveformChannels, 3);
        var dataSet = new DataSet().putItems(Tag.WaveformSequence, List.of(item));
        assertThat(written(EXPLICIT_VR_LITTLE_ENDIAN, dataSet))
                .isEqualTo(
                        "00540001"
                                + "5351"
                                + "0000"
                                + "12000000"
                                + "feff00e0"
                                + "0a000000"
                                + "3a000500"
                                + "5553"
                                + "0200"
                                + "0300");
    }

    /** PS3.5 7.5 tables 7.5-2 and 7.5-3: undefined lengths end with delimiters. */
    @Test
    void a_sequence_of_undefined_length_is_read_to_its_delimiters() throws IOException {
        DataSet dataSet =
                read(
                        EXPLICIT_VR_LITTLE_ENDIAN,
                        "00540001 5351 0000 ffffffff feff00e0 ffffffff 3a000500 5553 0200 0300"
                                + "feff0de0 00000000 feff00e0 00000000 feffdde0 00000000"
                                + "00541010 4f57 0000 02000000 0100");
        assertThat(dataSet.items(Tag.WaveformSequence)).hasSize(2);
        assertThat(
                        dataSet.item(Tag.WaveformSequence)
                                .orElseThrow()
                                .integer(Tag.NumberOfWaveformChannels))
                .contains(3L);
        assertThat(dataSet.bytes(Tag.WaveformData)).containsExactly(1, 0);
    }

    /** PS3.5 6.2.2 note: UN of undefined length is Implicit VR inside, whatever is around it. */
    @Test
    void un_of_undefined_length_is_a_sequence_in_implicit_vr() throws IOException {
        DataSet dataSet =
                read(
                        EXPLICIT_VR_LITTLE_ENDIAN,
                        "09001010 554e 0000 ffffffff feff00e0 0a000000 3a000500 02000000 0300"
                                + "feffdde0 00000000");
        DataSet item = dataSet.item(0x0009_1010).orElseThrow();
        assertThat(item.integer(Tag.NumberOfWaveformChannels)).contains(3L);
    }

    /** PS3.5 7.2: group lengths outside 0000 and 0002 are retired. */
    @Test
    void a_retired_group_length_is_dropped() throws IOException {
        DataSet dataSet =
                read(
                        IMPLICIT_VR_LITTLE_ENDIAN,
                        "10000000 04000000 0c000000 10002000 02000000 4131");
        assertThat(dataSet.elements()).hasSize(1);
        assertThat(dataSet.text(Tag.PatientID)).contains("A1");
    }

    /** PS3.5 7.1: ascending tags are written whatever order they came in. */
    @Test
    void elements_are_written_in_the_order_of_their_tags() throws IOException {
        DataSet dataSet =
                read(
                        IMPLICIT_VR_LITTLE_ENDIAN,
                        "00541010 02000000 0100 10002000 02000000 4131 08006000 04000000 45434720");
        assertThat(written(IMPLICIT_VR_LITTLE_ENDIAN, dataSet))
                .isEqualTo(
                        "08006000"
                                + "04000000"
                                + "45434720"
                                + "10002000"
                                + "02000000"
                                + "4131"
                                + "00541010"
                                + "02000000"
                                + "0100");
    }

    /** PS3.5 7.1.1: a received odd length is made even. */
    @Test
    void an_odd_length_is_read_and_padded_when_written() throws IOException {
        DataSet dataSet =
                read(
                        IMPLICIT_VR_LITTLE_ENDIAN,
                        "08001800 03000000 312e32 10002000 03000000 413132");
        assertThat(written(IMPLICIT_VR_LITTLE_ENDIAN, dataSet))
                .isEqualTo(
                        "08001800"
                                + "04000000"
                                + "312e3200"
                                + "10002000"
                                + "04000000"
                                + "41313220");
    }

    /** PS3.5 A.1: Waveform Data is OW in Implicit VR; the bytes of 8-bit samples do not move. */
    @Test
    void eight_bit_samples_are_ob_in_explicit_vr_only() throws IOException {
        var dataSet = new DataSet().putBytes(Tag.WaveformData, Vr.OB, new byte[] {1, 2, 3});
        String implicit = written(IMPLICIT_VR_LITTLE_ENDIAN, dataSet);
        assertThat(implicit).isEqualTo("00541010" + "04000000" + "01020300");
        assertThat(written(EXPLICIT_VR_LITTLE_ENDIAN, read(IMPLICIT_VR_LITTLE_ENDIAN, implicit)))
                .isEqualTo("00541010" + "4f570000" + "04000000" + "01020300");
    }

    /** PS3.5 6.2 table 6.2-1: SV and UV, 64 bits in the long form. */
    @Test
    void sixty_four_bit_integers_come_back() throws IOException {
        int minimum = 0x0072_0082; // Selector SV Value, SV 1-n (PS3.6)
        var dataSet = new DataSet().putInts(minimum, Long.MIN_VALUE, -1, Long.MAX_VALUE);
        String hex = written(EXPLICIT_VR_LITTLE_ENDIAN, dataSet);
        assertThat(hex).startsWith("72008200" + "53560000" + "18000000");
        assertThat(read(EXPLICIT_VR_LITTLE_ENDIAN, hex).ints(minimum))
                .containsExactly(Long.MIN_VALUE, -1L, Long.MAX_VALUE);
    }

    @ParameterizedTest
    @EnumSource(TransferSyntax.class)
    void every_kind_of_value_comes_back(TransferSyntax syntax) throws IOException {
        DataSet dataSet = Samples.everything();
        DataSet back = Files10.read(folder, syntax, Files10.bytes(folder, syntax, dataSet));
        assertThat(back.number(Tag.ChannelSensitivity)).contains(4.88281);
        assertThat(back.ints(Tag.ReferencedWaveformChannels)).containsExactly(1L, 0L, 1L, 65535L);
        assertThat(back.ints(Tag.ReferencedSamplePositions)).containsExactly(1L, 4294967295L);
        assertThat(back.text(Tag.PatientName)).contains("Müller^Zoë");
        assertThat(back.texts(Tag.SoftwareVersions)).containsExactly("1.0", "", "b");
        assertThat(back)
                .isEqualTo(Files10.read(folder, syntax, Files10.bytes(folder, syntax, back)));
    }

    @Test
    void implicit_and_explicit_vr_carry_the_same_data_set() throws IOException {
        DataSet dataSet = Samples.everything();
        byte[] implicit = Files10.bytes(folder, IMPLICIT_VR_LITTLE_ENDIAN, dataSet);
        DataSet once = Files10.read(folder, IMPLICIT_VR_LITTLE_ENDIAN, implicit);
        byte[] explicit = Files10.bytes(folder, EXPLICIT_VR_LITTLE_ENDIAN, once);
        DataSet twice = Files10.read(folder, EXPLICIT_VR_LITTLE_ENDIAN, explicit);
        assertThat(Files10.bytes(folder, IMPLICIT_VR_LITTLE_ENDIAN, twice)).isEqualTo(implicit);
    }

    /** PS3.5 7.1.2: the 16-bit length ends at 65534; our own data is never cut. */
    @Test
    void a_value_too_long_for_its_vr_is_refused_in_explicit_vr() throws IOException {
        var dataSet = new DataSet().putText(Tag.ImageComments, "x".repeat(65_535));
        assertThatThrownBy(() -> Files10.bytes(folder, EXPLICIT_VR_LITTLE_ENDIAN, dataSet))
                .isInstanceOf(DicomException.class)
                .hasMessage("(0020,4000) Image Comments is longer than the 65534 bytes of LT");
    }

    /** PS3.5 6.2.2: received in Implicit VR it is written as UN. */
    @Test
    void a_received_value_too_long_for_its_vr_is_written_as_un() throws IOException {
        var dataSet = new DataSet().putText(Tag.ImageComments, "x".repeat(65_536));
        byte[] implicit = Files10.bytes(folder, IMPLICIT_VR_LITTLE_ENDIAN, dataSet);
        DataSet received = Files10.read(folder, IMPLICIT_VR_LITTLE_ENDIAN, implicit);
        byte[] explicit = Files10.bytes(folder, EXPLICIT_VR_LITTLE_ENDIAN, received);
        assertThat(HEX.formatHex(explicit, 0, 12)).isEqualTo("20000040" + "554e0000" + "00000100");
        DataSet back = Files10.read(folder, EXPLICIT_VR_LITTLE_ENDIAN, explicit);
        assertThat(back.text(Tag.ImageComments)).contains("x".repeat(65_536));
    }
}

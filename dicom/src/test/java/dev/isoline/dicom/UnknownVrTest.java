package dev.isoline.dicom;

import static dev.isoline.dicom.TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
import static dev.isoline.dicom.TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** PS3.5 6.2.2: what UN is for, and what it is not for. */
class UnknownVrTest {

    private static final HexFormat HEX = HexFormat.of();

    @TempDir Path folder;

    private DataSet read(TransferSyntax syntax, String hex) throws IOException {
        return DataSetReader.read(HEX.parseHex(hex.replace(" ", "")), syntax, Files10.ALL);
    }

    private byte[] written(TransferSyntax syntax, DataSet dataSet) throws IOException {
        return Files10.bytes(folder, syntax, dataSet);
    }

    @Test
    void an_element_nobody_knows_is_un_and_comes_back_the_same() throws IOException {
        String unknown = "08000f0f 04000000 01020304";
        DataSet dataSet = read(IMPLICIT_VR_LITTLE_ENDIAN, unknown);
        assertThat(HEX.formatHex(written(EXPLICIT_VR_LITTLE_ENDIAN, dataSet)))
                .isEqualTo("08000f0f" + "554e0000" + "04000000" + "01020304");
        assertThat(HEX.formatHex(written(IMPLICIT_VR_LITTLE_ENDIAN, dataSet)))
                .isEqualTo(unknown.replace(" ", ""));
    }

    /** Note 2: who knows the element may take its value as Implicit VR Little Endian. */
    @Test
    void un_of_a_known_element_is_read_by_its_vr() throws IOException {
        DataSet dataSet =
                read(
                        EXPLICIT_VR_LITTLE_ENDIAN,
                        "08000500 43530a00 49534f5f495220313030"
                                + "10001000 554e0000 04000000 4772fc6e"
                                + "3a000500 554e0000 02000000 0300");
        assertThat(dataSet.text(Tag.PatientName)).contains("Grün");
        assertThat(dataSet.integer(Tag.NumberOfWaveformChannels)).contains(3L);
        dataSet.putText(Tag.SpecificCharacterSet, "ISO_IR 192");
        assertThat(HEX.formatHex(written(EXPLICIT_VR_LITTLE_ENDIAN, dataSet)))
                .contains("10001000" + "554e0000" + "06000000" + "4772c3bc6e");
    }

    @Test
    void a_private_creator_is_never_un() throws IOException {
        DataSet dataSet = read(EXPLICIT_VR_LITTLE_ENDIAN, "29001000 554e0000 04000000 41434d45");
        assertThat(HEX.formatHex(written(EXPLICIT_VR_LITTLE_ENDIAN, dataSet)))
                .isEqualTo("29001000" + "4c4f0400" + "41434d45");
        assertThatThrownBy(
                        () ->
                                read(
                                        IMPLICIT_VR_LITTLE_ENDIAN,
                                        "29001000 00000100" + "20".repeat(65_536)))
                .hasMessage("(0029,0010) is a private creator of 65536 bytes");
    }

    /** Text is transcoded also where it was too long for its VR, or it would be mangled. */
    @Test
    void a_long_text_kept_as_un_follows_the_character_set() throws IOException {
        var dataSet =
                new DataSet()
                        .putText(Tag.SpecificCharacterSet, "ISO_IR 100")
                        .putText(Tag.ImageComments, "ü".repeat(65_536));
        byte[] implicit = written(IMPLICIT_VR_LITTLE_ENDIAN, dataSet);
        DataSet received =
                DataSetReader.read(implicit, IMPLICIT_VR_LITTLE_ENDIAN, ReadLimits.DEFAULT);
        received.putText(Tag.SpecificCharacterSet, "ISO_IR 192");
        byte[] explicit = written(EXPLICIT_VR_LITTLE_ENDIAN, received);
        DataSet back = DataSetReader.read(explicit, EXPLICIT_VR_LITTLE_ENDIAN, Files10.ALL);
        assertThat(back.element(Tag.ImageComments).orElseThrow().vr()).isEqualTo(Vr.UN);
        assertThat(back.text(Tag.ImageComments)).contains("ü".repeat(65_536));
    }
}

package dev.isoline.dicom;

import static dev.isoline.dicom.TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** PS3.3 C.12.1.1.2 and PS3.5 6.1: text in the character set the data set names, or not at all. */
class CharacterSetTest {

    @TempDir Path folder;

    private byte[] written(String term, String name) throws IOException {
        var dataSet = new DataSet().putText(Tag.PatientName, name);
        if (!term.isEmpty()) {
            dataSet.putText(Tag.SpecificCharacterSet, term);
        }
        return Files10.bytes(folder, EXPLICIT_VR_LITTLE_ENDIAN, dataSet);
    }

    @Test
    void iso_ir_100_is_latin_1() throws IOException {
        byte[] bytes = written("ISO_IR 100", "Grün");
        assertThat(new String(bytes, StandardCharsets.ISO_8859_1)).endsWith("PN\4\0Grün");
        DataSet back = Files10.read(folder, EXPLICIT_VR_LITTLE_ENDIAN, bytes);
        assertThat(back.text(Tag.PatientName)).contains("Grün");
    }

    @Test
    void iso_ir_192_is_utf_8() throws IOException {
        byte[] bytes = written("ISO_IR 192", "小林");
        assertThat(new String(bytes, StandardCharsets.UTF_8)).endsWith("PN\6\0小林");
    }

    @Test
    void a_character_outside_the_set_is_refused() {
        assertThatThrownBy(() -> written("ISO_IR 100", "Łukasz"))
                .hasMessage("(0010,0010) Patient's Name holds a character outside ISO_IR 100");
        assertThatThrownBy(() -> written("", "Grün"))
                .hasMessage("(0010,0010) Patient's Name holds a character outside ISO_IR 6");
    }

    @Test
    void another_character_set_is_refused_by_name() {
        assertThatThrownBy(() -> written("ISO_IR 144", "A"))
                .hasMessageStartingWith("(0008,0005) Specific Character Set is ISO_IR 144;");
        assertThatThrownBy(() -> CharacterSet.of(List.of("", "ISO 2022 IR 87")))
                .hasMessageContaining("\\ISO 2022 IR 87");
    }

    @Test
    void bytes_outside_the_named_set_are_refused_when_asked_for_and_kept_when_rewritten()
            throws IOException {
        byte[] bytes = written("ISO_IR 192", "AAAA");
        bytes[bytes.length - 1] = (byte) 0xFC;
        DataSet back = Files10.read(folder, EXPLICIT_VR_LITTLE_ENDIAN, bytes);
        assertThatThrownBy(() -> back.text(Tag.PatientName))
                .hasMessage("(0010,0010) Patient's Name holds bytes that are not ISO_IR 192");
        assertThat(Files10.bytes(folder, EXPLICIT_VR_LITTLE_ENDIAN, back)).isEqualTo(bytes);
    }

    /** PS3.5 7.5.3: an item may name its own, else the one around it holds. */
    @Test
    void text_of_an_item_is_in_the_character_set_around_it() throws IOException {
        var item = new DataSet().putText(Tag.ChannelLabel, "Grün");
        var dataSet =
                new DataSet()
                        .putText(Tag.SpecificCharacterSet, "ISO_IR 100")
                        .putItems(Tag.ChannelDefinitionSequence, List.of(item));
        byte[] latin = Files10.bytes(folder, EXPLICIT_VR_LITTLE_ENDIAN, dataSet);
        DataSet back = Files10.read(folder, EXPLICIT_VR_LITTLE_ENDIAN, latin);
        back.putText(Tag.SpecificCharacterSet, "ISO_IR 192");
        byte[] utf8 = Files10.bytes(folder, EXPLICIT_VR_LITTLE_ENDIAN, back);
        DataSet again = Files10.read(folder, EXPLICIT_VR_LITTLE_ENDIAN, utf8);
        assertThat(new String(utf8, StandardCharsets.UTF_8)).contains("Grün");
        assertThat(again.items(Tag.ChannelDefinitionSequence).get(0).text(Tag.ChannelLabel))
                .contains("Grün");
    }

    /** PS3.5 7.5.3: an item may name its own; it holds for the items in it, not beside it. */
    @Test
    void an_item_with_its_own_character_set_is_read_and_written_in_it() throws IOException {
        var inner = new DataSet().putText(Tag.CodeMeaning, "Grün");
        var own =
                new DataSet()
                        .putText(Tag.SpecificCharacterSet, "ISO_IR 100")
                        .putText(Tag.ChannelLabel, "Grün")
                        .putItems(Tag.ChannelSourceSequence, List.of(inner));
        var beside = new DataSet().putText(Tag.ChannelLabel, "小林");
        var dataSet =
                new DataSet()
                        .putText(Tag.SpecificCharacterSet, "ISO_IR 192")
                        .putItems(Tag.ChannelDefinitionSequence, List.of(own, beside));
        byte[] bytes = Files10.bytes(folder, EXPLICIT_VR_LITTLE_ENDIAN, dataSet);
        assertThat(new String(bytes, StandardCharsets.ISO_8859_1).split("Grün")).hasSize(3);
        DataSet back = Files10.read(folder, EXPLICIT_VR_LITTLE_ENDIAN, bytes);
        List<DataSet> items = back.items(Tag.ChannelDefinitionSequence);
        assertThat(items.get(0).text(Tag.ChannelLabel)).contains("Grün");
        assertThat(items.get(0).items(Tag.ChannelSourceSequence).get(0).text(Tag.CodeMeaning))
                .contains("Grün");
        assertThat(items.get(1).text(Tag.ChannelLabel)).contains("小林");
    }

    /**
     * PS3.5 6.1.2.2: only SH, LO, ST, LT, PN, UC and UT; a CS with other bytes is kept as it is.
     */
    @Test
    void bytes_outside_ascii_in_another_vr_are_kept_when_rewritten() throws IOException {
        byte[] bytes = written("ISO_IR 100", "AAAA");
        DataSet dataSet =
                Files10.read(folder, EXPLICIT_VR_LITTLE_ENDIAN, bytes)
                        .putBytes(Tag.Modality, Vr.CS, new byte[] {'E', 'C', 'G', ' '});
        byte[] broken = Files10.bytes(folder, EXPLICIT_VR_LITTLE_ENDIAN, dataSet);
        broken[broken.length - 13] = (byte) 0xFC;
        DataSet back = Files10.read(folder, EXPLICIT_VR_LITTLE_ENDIAN, broken);
        assertThatThrownBy(() -> back.text(Tag.Modality))
                .hasMessage("(0008,0060) Modality holds bytes that are not ISO_IR 6");
        assertThat(Files10.bytes(folder, EXPLICIT_VR_LITTLE_ENDIAN, back)).isEqualTo(broken);
    }

    /** PS3.3 C.12.1.1.2: names in other sets, as pydicom's Debian package ships them. */
    @Test
    void files_in_other_character_sets_are_refused_by_name() throws IOException {
        Path charsets = Path.of("/usr/lib/python3/dist-packages/pydicom/data/charset_files");
        Assumptions.assumeTrue(Files.isDirectory(charsets), "pydicom's files are not here");
        assertThatThrownBy(() -> Files10.read(charsets.resolve("chrH31.dcm")))
                .hasMessageStartingWith(
                        "(0008,0005) Specific Character Set is \\ISO 2022 IR 87; supported are");
        assertThat(Files10.read(charsets.resolve("chrX1.dcm")).dataSet().text(Tag.PatientName))
                .contains("Wang^XiaoDong=王^小東=");
        assertThat(Files10.read(charsets.resolve("chrGerm.dcm")).dataSet().text(Tag.PatientName))
                .contains("Äneas^Rüdiger");
    }
}

package dev.isoline.dicom;

import static dev.isoline.dicom.TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
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
        assertThatThrownBy(() -> CharacterSet.of(java.util.List.of("", "ISO 2022 IR 87")))
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
                        .putItems(Tag.ChannelDefinitionSequence, java.util.List.of(item));
        byte[] latin = Files10.bytes(folder, EXPLICIT_VR_LITTLE_ENDIAN, dataSet);
        DataSet back = Files10.read(folder, EXPLICIT_VR_LITTLE_ENDIAN, latin);
        back.putText(Tag.SpecificCharacterSet, "ISO_IR 192");
        byte[] utf8 = Files10.bytes(folder, EXPLICIT_VR_LITTLE_ENDIAN, back);
        DataSet again = Files10.read(folder, EXPLICIT_VR_LITTLE_ENDIAN, utf8);
        assertThat(new String(utf8, StandardCharsets.UTF_8)).contains("Grün");
        assertThat(again.items(Tag.ChannelDefinitionSequence).get(0).text(Tag.ChannelLabel))
                .contains("Grün");
    }
}

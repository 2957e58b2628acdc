package dev.isoline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.Field;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** The tags we name against a dictionary we did not write. */
class DictionaryTest {

    private static TreeMap<String, Integer> constants() throws IllegalAccessException {
        var constants = new TreeMap<String, Integer>();
        for (Field field : Tag.class.getFields()) {
            constants.put(field.getName(), field.getInt(null));
        }
        return constants;
    }

    @Test
    void every_constant_has_a_row_of_the_same_keyword() throws IllegalAccessException {
        assertThat(constants())
                .isNotEmpty()
                .allSatisfy(
                        (keyword, tag) -> assertThat(Dictionary.keyword(tag)).contains(keyword));
    }

    /** pydicom's data dictionary; "OB or OW" is OW and "US or SS" is US for us. */
    @Test
    void tag_and_vr_agree_with_pydicom() throws Exception {
        var script = new StringBuilder("from pydicom.datadict import *\n");
        constants()
                .forEach(
                        (keyword, tag) ->
                                script.append(
                                        "t=tag_for_keyword('%s'); assert t==%d and '%s' in dictionary_VR(t), '%s'\n"
                                                .formatted(
                                                        keyword,
                                                        Integer.toUnsignedLong(tag),
                                                        Dictionary.vr(tag),
                                                        keyword)));
        assertThat(Python.run(script + "print('agreed')\n")).isEqualTo("agreed");
    }

    @Test
    void a_private_creator_is_lo_and_what_nobody_knows_is_un() throws IOException {
        assertThat(Dictionary.vr(0x0029_0010)).isEqualTo(Vr.LO);
        assertThat(Dictionary.vr(0x0029_1001)).isEqualTo(Vr.UN);
    }
}

package dev.isoline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Field;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** PS3.6 chapters 6 to 8: our rows against a dictionary we did not write. */
class DictionaryTest {

    /** VM or retirement differ between the editions of pydicom 2.3.1 and ours. */
    private static final Set<String> CHANGED =
            Set.of("FrameType", "ProposedStudySequence", "OriginalImageSequence");

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

    @Test
    void a_vr_compiled_in_is_the_one_of_the_table() throws IllegalAccessException {
        assertThat(constants())
                .allSatisfy(
                        (keyword, tag) ->
                                assertThat(TagVr.of(tag))
                                        .isIn(null, Dictionary.entry(tag).orElseThrow().vr()));
        assertThat(TagVr.of(Tag.WaveformData)).isEqualTo(Vr.OW);
    }

    /** Every row pydicom has, but for delimiters and rows PS3.6 left blank. */
    @Test
    void tag_vr_vm_keyword_name_and_retirement_agree_with_pydicom() throws Exception {
        List<String> rows =
                Python.run(
                                """
                                from pydicom._dicom_dict import DicomDictionary as rows
                                for tag, (vr, vm, name, retired, keyword) in rows.items():
                                    if vr != 'NONE' and name != 'Retired-blank':
                                        print('%08X' % tag, vr, vm, name, retired, keyword, '.', sep='\\t')
                                """)
                        .lines()
                        .toList();
        assertThat(rows).hasSizeGreaterThan(4_800);
        assertThat(rows).filteredOn(row -> !agrees(row.split("\t"))).isEmpty();
    }

    /** Later editions retire elements and capitalise names anew. */
    private static boolean agrees(String[] row) {
        Dictionary.Entry entry =
                Dictionary.entry(Integer.parseUnsignedInt(row[0], 16)).orElseThrow();
        return List.of(row[1].split(" or ")).contains(entry.vr().name())
                && entry.name().equalsIgnoreCase(row[3])
                && entry.keyword().equals(row[5])
                && (CHANGED.contains(entry.keyword())
                        || entry.vm().equals(row[2]) && (entry.retired() || row[4].isEmpty()));
    }

    /** Keywords from pydicom's table of repeating groups; groups that PS3.5 7.6 names. */
    @ParameterizedTest
    @CsvSource({
        "50000005, US, CurveDimensions",
        "501E3000, OW, CurveData",
        "60003000, OW, OverlayData",
        "60FE0010, US, OverlayRows",
        "7F020010, OW, VariablePixelData",
        "7FE00010, OW, PixelData",
        "00203105, CS, SourceImageIDs",
        "002804F1, US, ColumnsForNthOrderCoefficients",
        "00280824, US, BitsForCodeWord",
        "10001231, US, RunLengthTriplet",
        "1010ABCD, US, ZonalMap"
    })
    void repeating_groups_are_found_by_their_mask(String tag, Vr vr, String keyword) {
        Dictionary.Entry entry = Dictionary.entry(Integer.parseUnsignedInt(tag, 16)).orElseThrow();
        assertThat(entry.vr()).isEqualTo(vr);
        assertThat(entry.keyword()).isEqualTo(keyword);
    }

    /** PS3.6 prints "OB or OW" and "US or SS"; PS3.5 A.1 has OW in Implicit VR. */
    @Test
    void a_choice_of_vr_is_decided_once() {
        assertThat(Dictionary.vr(Tag.WaveformData)).isEqualTo(Vr.OW);
        assertThat(Dictionary.vr(0x0028_0106)).isEqualTo(Vr.US);
        assertThat(Dictionary.vr(0x0028_3006)).isEqualTo(Vr.OW);
    }

    /** PS3.5 7.8.1 and 6.2.2; an odd group is never in a repeating group. */
    @Test
    void a_private_creator_is_lo_and_what_nobody_knows_is_un() {
        assertThat(Dictionary.vr(0x0029_0010)).isEqualTo(Vr.LO);
        assertThat(Dictionary.vr(0x0029_1001)).isEqualTo(Vr.UN);
        assertThat(Dictionary.vr(0x5001_0005)).isEqualTo(Vr.UN);
        assertThat(Dictionary.vr(0x0008_FFFF)).isEqualTo(Vr.UN);
        assertThat(Dictionary.entry(0xFFFE_E000)).isEmpty();
    }

    @Test
    void the_first_and_the_last_row_are_found() {
        assertThat(Dictionary.keyword(0)).contains("CommandGroupLength");
        assertThat(Dictionary.keyword(0xFFFC_FFFC)).contains("DataSetTrailingPadding");
        assertThat(Dictionary.entry(-1)).isEmpty();
    }
}

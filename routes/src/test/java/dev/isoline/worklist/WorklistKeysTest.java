package dev.isoline.worklist;

import static dev.isoline.worklist.MadeItem.with;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.Vr;
import dev.isoline.ledger.WorklistSearch;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** PS3.4 C.2.2.2 (2024d and e where read) and annex K, row by row. */
class WorklistKeysTest {

    private static final int DATE = Tag.ScheduledProcedureStepStartDate;
    private static final int TIME = Tag.ScheduledProcedureStepStartTime;

    private static DataSet keys(Object... tagsAndTexts) {
        return with(new DataSet(), tagsAndTexts);
    }

    private static DataSet step(Object... tagsAndTexts) {
        return new DataSet()
                .putItems(Tag.ScheduledProcedureStepSequence, List.of(keys(tagsAndTexts)));
    }

    private static boolean match(DataSet request, DataSet item) throws UnusableKey {
        var keys = WorklistKeys.of(request, "ASKING");
        return keys.match(keys.seen(item));
    }

    private static boolean match(DataSet request) throws UnusableKey {
        return match(request, MadeItem.of("Moreau^Ines^C"));
    }

    private static DataSet answer(DataSet request, DataSet item) throws UnusableKey {
        var keys = WorklistKeys.of(request, "ASKING");
        return keys.answer(keys.seen(item));
    }

    /** C.2.2.2.1: exactly, and in the case it is written in. */
    @ParameterizedTest
    @CsvSource({"A1000, true", "a1000, false", "A100, false", "A10000, false"})
    void single_value(String key, boolean matches) throws UnusableKey {
        assertThat(match(keys(Tag.AccessionNumber, key))).isEqualTo(matches);
    }

    /** C.2.2.2.4. */
    @ParameterizedTest
    @CsvSource({
        "A*, true",
        "*, true",
        "A?000, true",
        "A1??0, true",
        "?????, true",
        "????, false",
        "*00, true",
        "A*0*0*0, true",
        "A*0*0*0*0, false",
        "a*, false",
        "*1*, true",
        "*2*, false",
        "A1000*, true",
        "A1000?, false"
    })
    void wild_cards(String key, boolean matches) throws UnusableKey {
        assertThat(match(keys(Tag.AccessionNumber, key))).isEqualTo(matches);
    }

    /** C.2.2.2.1 and C.2.2.2.4 leave names to the conformance statement: this is its table. */
    @ParameterizedTest
    @CsvSource({
        "Moreau^Ines^C, Moreau^Ines^C, true",
        "MOREAU^INES^C, Moreau^Ines^C, true",
        "moreau*, Moreau^Ines^C, true",
        "Moreau^Ines, Moreau^Ines^C, false",
        "Moreau^Ines*, Moreau^Ines^C, true",
        "Moreau^*^C, Moreau^Ines^C, true",
        "Mor?au*, Moreau^Ines^C, true",
        "Angstrom*, Ångström^Åsa, true",
        "ÅNGSTRÖM*, Angstrom^Asa, true",
        "Weiss, Weiß, true",
        "Soren*, Søren^Anna, true",
        "Lodz*, Łódź^Anna, true",
        "Moreau^^, Moreau, true",
        "Moreau^*, Moreau, true",
        "Moreau ^ Ines, Moreau^Ines, true",
        "Yamada=*, Yamada^Tarou, false",
        "Yamada*=*, Yamada^Tarou=山田^太郎, true",
        "=山田*, Yamada^Tarou=山田^太郎, true",
        "=山川*, Yamada^Tarou=山田^太郎, false",
        "Oreau*, Moreau^Ines, false"
    })
    void names(String key, String name, boolean matches) throws UnusableKey {
        assertThat(match(keys(Tag.PatientName, key), MadeItem.of(name))).isEqualTo(matches);
    }

    /** C.2.2.2.2. */
    @ParameterizedTest
    @CsvSource({"2.999.1.1, true", "2.999.1.2\\2.999.1.1, true", "2.999.1.2, false"})
    void lists_of_uids(String key, boolean matches) throws UnusableKey {
        assertThat(match(keys(Tag.StudyInstanceUID, key))).isEqualTo(matches);
    }

    @Test
    void numbers_match_as_numbers() throws UnusableKey {
        assertThat(match(keys(Tag.PatientWeight, "71.50"))).isTrue();
        assertThat(match(keys(Tag.PatientWeight, "72"))).isFalse();
    }

    /** K.2.2.1.1.1: an unknown value matches no key but the universal ones. */
    @Test
    void an_unknown_value_matches_only_universally() throws UnusableKey {
        assertThat(match(keys(Tag.AdmissionID, "V5"))).isFalse();
        assertThat(match(keys(Tag.AdmissionID, "V*"))).isFalse();
        assertThat(match(keys(Tag.AdmissionID, "*"))).isTrue();
        assertThat(match(new DataSet().putEmpty(Tag.AdmissionID))).isTrue();
    }

    @Test
    void a_key_nobody_supports_matches_everything_and_the_response_says_so() throws UnusableKey {
        var request = keys(Tag.BarcodeValue, "X", Tag.PatientID, "4711");
        assertThat(match(request)).isTrue();
        assertThat(WorklistKeys.of(request, "A").areCarried()).isFalse();
        assertThat(WorklistKeys.of(keys(Tag.PatientID, "4711"), "A").areCarried()).isTrue();
    }

    /** C.2.2.2.6. */
    @Nested
    class Sequences {

        @Test
        void match_where_some_item_matches_every_key() throws UnusableKey {
            assertThat(match(codes("18754-2", "LN"))).isTrue();
            assertThat(match(codes("18754-2", "SCT"))).isFalse();
        }

        @Test
        void without_item_or_value_match_everything() throws UnusableKey {
            assertThat(match(new DataSet().putEmpty(Tag.ScheduledProcedureStepSequence))).isTrue();
            assertThat(match(step())).isTrue();
        }

        @Test
        void of_two_items_are_refused() {
            var two =
                    new DataSet()
                            .putItems(
                                    Tag.ScheduledProcedureStepSequence,
                                    List.of(new DataSet(), new DataSet()));
            assertThatThrownBy(() -> match(two)).hasMessage("(0040,0100) has more than one item");
        }

        private DataSet codes(String value, String scheme) {
            var code = keys(Tag.CodeValue, value, Tag.CodingSchemeDesignator, scheme);
            return new DataSet().putItems(Tag.RequestedProcedureCodeSequence, List.of(code));
        }
    }

    /** C.2.2.2.5 and table K.6-1; the step starts on 4 November 2026 at 9:00. */
    @Nested
    class Start {

        @ParameterizedTest
        @CsvSource({
            "20261104, true",
            "20261103, false",
            "20261104-, true",
            "20261105-, false",
            "-20261104, true",
            "-20261103, false",
            "20261104-20261104, true",
            "20261101-20261130, true",
            "20261101 - 20261130, true",
            "20261105-20261130, false"
        })
        void by_date(String key, boolean matches) throws UnusableKey {
            assertThat(match(step(DATE, key))).isEqualTo(matches);
        }

        @ParameterizedTest
        @CsvSource({
            "090000, true",
            "0900, true",
            "09, true",
            "090001, false",
            "10, false",
            "0900-1000, true",
            "08-09, true",
            "0800-0859, false",
            "-085959, false",
            "-090000, true",
            "090000.000001-, false",
            "090000-235960, true"
        })
        void by_time(String key, boolean matches) throws UnusableKey {
            assertThat(match(step(TIME, key))).isEqualTo(matches);
        }

        /** The example of table K.6-1: from 5 July, 10 h, to 7 July, 18 h, without a break. */
        @ParameterizedTest
        @CsvSource({
            "20060705, 095959, false",
            "20060705, 100000, true",
            "20060706, 030000, true",
            "20060706, 230000, true",
            "20060707, 180000, true",
            "20060707, 180100, false"
        })
        void by_date_and_time_as_one_period(String date, String time, boolean matches)
                throws UnusableKey {
            var item = MadeItem.of("Moreau");
            with(StoredItem.step(item), DATE, date, TIME, time);
            var request = step(DATE, "20060705-20060707", TIME, "10-18");
            assertThat(match(request, item)).isEqualTo(matches);
        }

        @Test
        void a_period_may_end_at_an_earlier_time_of_day() throws UnusableKey {
            assertThat(match(step(DATE, "20261103-20261104", TIME, "1800-0900"))).isTrue();
            assertThat(match(step(DATE, "20261103-20261104", TIME, "1800-0859"))).isFalse();
        }

        @Test
        void open_ranges_of_the_same_form_are_one_period() throws UnusableKey {
            assertThat(match(step(DATE, "20261103-", TIME, "1800-"))).isTrue();
            assertThat(match(step(DATE, "-20261105", TIME, "-0800"))).isTrue();
        }

        @Test
        void forms_that_differ_are_matched_each_by_itself() throws UnusableKey {
            assertThat(match(step(DATE, "20261103-20261105", TIME, "0900"))).isTrue();
            assertThat(match(step(DATE, "20261103-20261105", TIME, "1000-"))).isFalse();
            assertThat(match(step(DATE, "20261104", TIME, "0800-1000"))).isTrue();
        }
    }

    @Nested
    class A_malformed_key {

        /** Of these, taken for universal, every one would tell the whole worklist. */
        @ParameterizedTest
        @ValueSource(
                strings = {
                    "2026",
                    "202611",
                    "2026110",
                    "20261104 20261105",
                    "-",
                    " - ",
                    "*",
                    "2026*",
                    "20261301",
                    "20261131",
                    "20260230",
                    "2026-11-04",
                    "04.11.2026",
                    "today",
                    "20261104-20261103",
                    "20261104-20261103-",
                    "--20261104",
                    "202611??",
                    "2026110420261104",
                    "00000000",
                    "20261104\\20261105"
                })
        void of_a_date_is_refused_by_its_tag(String key) {
            assertThatThrownBy(() -> match(step(DATE, key)))
                    .isInstanceOf(UnusableKey.class)
                    .hasMessageStartingWith("(0040,0002) ")
                    .message()
                    .hasSizeLessThanOrEqualTo(64)
                    .doesNotContain("2026");
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "9",
                    "240000",
                    "0960",
                    "090061",
                    "09:00",
                    "09-08",
                    "-",
                    "*",
                    "0900.5",
                    "noon",
                    "090000.1234567",
                    "-0900-",
                    "0900\\1000"
                })
        void of_a_time_is_refused_by_its_tag(String key) {
            assertThatThrownBy(() -> match(step(TIME, key)))
                    .isInstanceOf(UnusableKey.class)
                    .hasMessageStartingWith("(0040,0003) ");
        }

        @Test
        void of_another_date_a_number_or_a_uid_is_refused_by_its_tag() {
            assertThatThrownBy(() -> match(keys(Tag.PatientBirthDate, "1958")))
                    .hasMessageStartingWith("(0010,0030) ");
            assertThatThrownBy(() -> match(keys(Tag.PatientWeight, "heavy")))
                    .hasMessageStartingWith("(0010,1030) ");
            assertThatThrownBy(() -> match(keys(Tag.StudyInstanceUID, "2.999.*")))
                    .hasMessageStartingWith("(0020,000D) ");
        }

        @Test
        void of_a_time_zone_is_refused_by_its_tag() {
            assertThatThrownBy(() -> match(keys(Tag.TimezoneOffsetFromUTC, "CET")))
                    .hasMessageStartingWith("(0008,0201) ");
        }
    }

    /** Table K.6-1: Scheduled Station AE Title; a step for any station is for the one asked for. */
    @Nested
    class A_step_for_any_station {

        private static final int STATION = Tag.ScheduledStationAETitle;

        private String station(DataSet request) throws UnusableKey {
            var answer = answer(request, MadeItem.of("Moreau"));
            return StoredItem.text(STATION, StoredItem.step(answer));
        }

        @Test
        void is_scheduled_for_the_station_of_the_key() throws UnusableKey {
            assertThat(match(step(STATION, "HB_ECG_1"))).isTrue();
            assertThat(station(step(STATION, "HB_ECG_1"))).isEqualTo("HB_ECG_1");
        }

        @Test
        void else_for_the_caller() throws UnusableKey {
            assertThat(station(new DataSet().putEmpty(Tag.ScheduledProcedureStepSequence)))
                    .isEqualTo("ASKING");
        }

        @Test
        void but_one_for_a_certain_station_is_for_no_other() throws UnusableKey {
            var item = MadeItem.of("Moreau");
            with(StoredItem.step(item), STATION, "HB_ECG_1");
            assertThat(match(step(STATION, "HB_ECG_1"), item)).isTrue();
            assertThat(match(step(STATION, "HB_ECG_2"), item)).isFalse();
            assertThat(match(step(Tag.Modality, "ECG"), item)).isTrue();
        }
    }

    /** K.4.1.1.3: Timezone Offset From UTC. */
    @Nested
    class A_caller_with_an_offset {

        @Test
        void asks_and_is_answered_in_its_own_time() throws UnusableKey {
            var request = step(DATE, "20261104", TIME, "180000");
            with(request, Tag.TimezoneOffsetFromUTC, "+0900");
            assertThat(match(request)).isTrue();
            var answer = answer(request, MadeItem.of("Moreau"));
            assertThat(StoredItem.text(TIME, StoredItem.step(answer))).isEqualTo("180000");
            assertThat(StoredItem.text(Tag.TimezoneOffsetFromUTC, answer)).isEqualTo("+0900");
        }

        @Test
        void may_be_on_another_day() throws UnusableKey {
            var item = MadeItem.of("Moreau");
            with(StoredItem.step(item), TIME, "230000");
            var request = step(DATE, "20261105");
            with(request, Tag.TimezoneOffsetFromUTC, "+0200");
            assertThat(match(request, item)).isTrue();
            var search = WorklistKeys.of(request, "A").search();
            assertThat(search.from()).isLessThan(20261104_230000L);
        }

        @Test
        void and_one_without_gets_none() throws UnusableKey {
            var answer = answer(step(DATE, ""), MadeItem.of("Moreau"));
            assertThat(answer.contains(Tag.TimezoneOffsetFromUTC)).isFalse();
        }
    }

    /** K.4.1.1.3.2. */
    @Nested
    class The_answer {

        @Test
        void holds_what_was_asked_for_and_nothing_else() throws UnusableKey {
            var request = keys(Tag.PatientID, "4711");
            request.putEmpty(Tag.PatientName).putEmpty(Tag.BarcodeValue).putEmpty(Tag.AdmissionID);
            var answer = answer(request, MadeItem.of("Moreau^Ines"));
            assertThat(answer.elements())
                    .extracting(e -> e.tag())
                    .containsExactly(
                            Tag.PatientName, Tag.PatientID, Tag.AdmissionID, Tag.BarcodeValue);
            assertThat(StoredItem.text(Tag.PatientName, answer)).isEqualTo("Moreau^Ines");
            assertThat(answer.hasValue(Tag.BarcodeValue)).isFalse();
        }

        @Test
        void holds_of_a_sequence_the_attributes_of_its_item() throws UnusableKey {
            var request =
                    new DataSet()
                            .putItems(
                                    Tag.ScheduledProcedureStepSequence,
                                    List.of(new DataSet().putEmpty(Tag.Modality)));
            var step = StoredItem.step(answer(request, MadeItem.of("Moreau")));
            assertThat(step.elements()).extracting(e -> e.tag()).containsExactly(Tag.Modality);
        }

        @Test
        void holds_all_of_a_sequence_asked_for_without_item_or_with_an_empty_one()
                throws UnusableKey {
            for (DataSet request :
                    List.of(step(), new DataSet().putEmpty(Tag.ScheduledProcedureStepSequence))) {
                var step = StoredItem.step(answer(request, MadeItem.of("Moreau")));
                assertThat(step.elements()).hasSize(6);
            }
        }

        @Test
        void leaves_out_private_elements_and_group_lengths() throws UnusableKey {
            var request = keys(Tag.PatientID, "4711");
            request.putBytes(0x0009_0010, Vr.LO, "X".getBytes());
            assertThat(answer(request, MadeItem.of("Moreau")).elements()).hasSize(1);
        }

        @ParameterizedTest
        @CsvSource({
            "'',         Moreau,    ''",
            "ISO_IR 100, Moreau,    ''",
            "ISO_IR 192, Moreau,    ''",
            "'',         Ångström,  ISO_IR 100",
            "ISO_IR 100, Ångström,  ISO_IR 100",
            "ISO_IR 192, Ångström,  ISO_IR 192",
            "ISO_IR 100, Łódź,      ISO_IR 192",
            "'',         Łódź,      ISO_IR 192"
        })
        void is_in_a_character_set_the_caller_can_read(String asked, String name, String set)
                throws UnusableKey {
            var request = new DataSet().putEmpty(Tag.PatientName);
            if (!asked.isEmpty()) {
                with(request, Tag.SpecificCharacterSet, asked);
            }
            var answer = answer(request, MadeItem.of(name));
            assertThat(StoredItem.text(Tag.SpecificCharacterSet, answer)).isEqualTo(set);
            assertThat(answer.contains(Tag.SpecificCharacterSet)).isEqualTo(!set.isEmpty());
        }
    }

    /** What the ledger is asked for holds at least all that matches. */
    @Nested
    class The_search {

        private WorklistSearch search(DataSet request) throws UnusableKey {
            return WorklistKeys.of(request, "ASKING").search();
        }

        @Test
        void is_by_period() throws UnusableKey {
            var search = search(step(DATE, "20261104", TIME, "0900-1000"));
            assertThat(search.from()).isEqualTo(20261104_000000L);
            assertThat(search.to()).isEqualTo(20261104_235959L);
            search = search(step(DATE, "20261104-20261105", TIME, "0900-1000"));
            assertThat(search.from()).isEqualTo(20261104_090000L);
            assertThat(search.to()).isEqualTo(20261105_100059L);
        }

        @ParameterizedTest
        @CsvSource({
            "Moreau^Ines, MOREAU^INES",
            "Moreau*, MOREAU",
            "Moreau^*, MOREAU",
            "Ångs?röm, ANGS",
            "*au, ''",
            "=山田, ''"
        })
        void is_by_what_a_name_begins_with(String key, String beginning) throws UnusableKey {
            assertThat(search(keys(Tag.PatientName, key)).name()).isEqualTo(beginning);
        }

        @Test
        void is_by_a_number_without_wild_cards() throws UnusableKey {
            assertThat(search(keys(Tag.PatientID, "4711")).patientId()).contains("4711");
            assertThat(search(keys(Tag.PatientID, "47*")).patientId()).isEmpty();
            assertThat(search(keys(Tag.AccessionNumber, "A1")).accession()).contains("A1");
            assertThat(search(keys(Tag.RequestedProcedureID, "A1")).accession()).contains("A1");
            assertThat(search(step(Tag.ScheduledProcedureStepID, "A1")).accession()).contains("A1");
        }
    }
}

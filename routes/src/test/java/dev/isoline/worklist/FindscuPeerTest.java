package dev.isoline.worklist;

import static dev.isoline.worklist.MadeItem.with;
import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.spi.AeTitle;
import dev.isoline.dicom.spi.DicomEngine;
import dev.isoline.dicom.spi.Listener;
import dev.isoline.dicom.spi.Local;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.LedgerFactory;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The worklist as DCMTK's findscu gets it. Keys and what has to come: PS3.4 C.2.2.2 and K.6.1. */
@org.junit.jupiter.api.Tag("peer")
@Timeout(120)
class FindscuPeerTest {

    private static final String ID = "(0010,0020)";
    private static final String NAME = "(0010,0010)";
    private static final String SET = "(0008,0005)=";
    private static final String STEP = "(0040,0100)[0].";
    private static final String DATE = STEP + "(0040,0002)=";
    private static final String TIME = STEP + "(0040,0003)=";

    @TempDir static Path folder;
    private static Ledger ledger;
    private static Listener listener;
    private static Findscu findscu;

    @BeforeAll
    static void start() throws Exception {
        Findscu.require();
        ledger = LedgerFactory.open("", "", "", folder);
        put("P1", "Moreau^Ines", "20261104", "090000");
        put("P2", "Ångström^Åsa", "20261105", "140000");
        put("P3", "Łódź^Anna", "20261106", "090000");
        put("P4", "Moreau^Otto", "20261107", "180000");
        var services =
                Services.echoing()
                        .finding(
                                SopClass.MODALITY_WORKLIST_FIND,
                                new Worklist(ledger, Clock.systemUTC()));
        listener =
                DicomEngine.find()
                        .listen(Local.of(new AeTitle("ISOLINE"), "127.0.0.1", 0), services);
        findscu = new Findscu(listener.address().getPort(), "ISOLINE");
    }

    @AfterAll
    static void stop() throws Exception {
        if (listener != null) {
            listener.close();
        }
        if (ledger != null) {
            ledger.close();
        }
    }

    private static void put(String id, String name, String date, String time) {
        DataSet item = MadeItem.of(name);
        with(item, Tag.PatientID, id, Tag.AccessionNumber, "A" + id);
        with(
                StoredItem.step(item),
                Tag.ScheduledProcedureStepStartDate,
                date,
                Tag.ScheduledProcedureStepStartTime,
                time);
        ledger.write(
                        tables -> {
                            tables.worklist().put(WorklistEntries.entry(id, item));
                            return null;
                        })
                .join();
    }

    @ParameterizedTest
    @CsvSource({"-xe", "-xi", "-x=", "-xd"})
    void explicit_and_implicit_vr_get_the_same_item(String syntax) throws Exception {
        var item =
                findscu.ask(
                        syntax,
                        ID + "=P1",
                        NAME,
                        "(0020,000d)",
                        "(0010,2110)",
                        STEP + "(0008,0060)");
        assertThat(item.values("0010,0010")).containsExactly("Moreau^Ines");
        assertThat(item.values("0020,000d")).containsExactly(MadeItem.STUDY);
        assertThat(item.values("0008,0060")).containsExactly("ECG");
        assertThat(item.text()).contains("(0010,2110) LO (no value available)");
    }

    @ParameterizedTest
    @CsvSource({
        "20261104, '', P1",
        "20261105-, '', P2 P3 P4",
        "-20261105, '', P1 P2",
        "20261105-20261106, '', P2 P3",
        "20261104-20261107, 1000-1759, P2 P3",
        "'', 0900, P1 P3",
        "'', 1200-, P2 P4"
    })
    void ranges(String date, String time, String ids) throws Exception {
        var found = findscu.ask(ID, DATE + date, TIME + time);
        assertThat(found.values("0010,0020")).containsExactly(ids.split(" "));
    }

    @ParameterizedTest
    @CsvSource({
        "Moreau*, P1 P4",
        "MOREAU^I*, P1",
        "Moreau^?nes, P1",
        "angstrom*, P2",
        "lodz^anna, P3",
        "*o*, P1 P4 P2 P3",
        "*^in?s, P1",
        "*ngstr*, P2"
    })
    void wild_cards_in_names(String name, String ids) throws Exception {
        var found = findscu.ask(ID, NAME + "=" + name);
        assertThat(found.values("0010,0020")).containsExactlyInAnyOrder(ids.split(" "));
    }

    @Test
    void a_name_may_be_asked_for_in_utf_8() throws Exception {
        var found = findscu.ask(ID, SET + "ISO_IR 192", NAME + "=Łódź*");
        assertThat(found.values("0010,0020")).containsExactly("P3");
        assertThat(found.utf8("0010,0010")).containsExactly("Łódź^Anna");
        assertThat(found.values("0008,0005")).containsExactly("ISO_IR 192");
    }

    @Test
    void latin_1_is_answered_in_latin_1_where_it_holds_the_name() throws Exception {
        var found = findscu.ask(SET + "ISO_IR 100", ID + "=P2", NAME);
        assertThat(found.values("0010,0010")).containsExactly("Ångström^Åsa");
        assertThat(found.values("0008,0005")).containsExactly("ISO_IR 100");
        var other = findscu.ask(SET + "ISO_IR 100", ID + "=P3", NAME);
        assertThat(other.utf8("0010,0010")).containsExactly("Łódź^Anna");
        assertThat(other.values("0008,0005")).containsExactly("ISO_IR 192");
    }

    @Test
    void ascii_is_answered_without_a_character_set() throws Exception {
        var found = findscu.ask(SET + "ISO_IR 192", ID + "=P1", NAME);
        assertThat(found.values("0008,0005")).isEmpty();
    }

    @Test
    void nothing_found_is_success_without_a_response() throws Exception {
        var found = findscu.ask(ID + "=NOBODY");
        assertThat(found.responses()).isZero();
        assertThat(found.text()).contains("Received Final Find Response (Success)");
    }

    @Test
    void a_malformed_date_is_a_failure_and_tells_nobody() throws Exception {
        var found = findscu.ask(ID, DATE + "4.11.2026");
        assertThat(found.responses()).isZero();
        assertThat(found.text())
                .contains("Received Final Find Response (Error: DataSetDoesNotMatchSOPClass)")
                .doesNotContain("P1");
    }

    @Test
    void a_cancelled_query_ends_as_cancelled() throws Exception {
        for (int i = 0; i < 2000; i++) {
            put("Q" + i, "Many^Orders", "20270101", "080000");
        }
        try {
            var found = findscu.ask("--cancel 3", ID, DATE + "20270101");
            assertThat(found.text()).contains("Cancel");
            assertThat(found.responses()).isBetween(3L, 1999L);
        } finally {
            ledger.write(
                            tables -> {
                                for (int i = 0; i < 2000; i++) {
                                    tables.worklist().remove("Q" + i);
                                }
                                return null;
                            })
                    .join();
        }
    }

    @Test
    void a_call_for_another_title_is_rejected() throws Exception {
        var found = new Findscu(findscu.port(), "SOMEBODY").ask(ID);
        assertThat(found.text()).contains("Called AE Title Not Recognized");
    }

    @Test
    void a_key_nobody_supports_is_told_by_the_status() throws Exception {
        var found = findscu.ask(ID + "=P1", "(2200,0005)=X");
        assertThat(found.responses()).isEqualTo(1);
        assertThat(found.text()).contains("(Pending: WarningUnsupportedOptionalKeys)");
        assertThat(List.of(found.text())).noneMatch(t -> t.contains("[X]\n"));
    }
}

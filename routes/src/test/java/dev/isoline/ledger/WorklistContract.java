package dev.isoline.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.ledger.WorklistTable.Entry;
import dev.isoline.ledger.WorklistTable.Found;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What the table of the worklist promises, on either store. */
abstract class WorklistContract {

    private static final long LAST = Long.MAX_VALUE;

    private Ledger ledger;

    abstract Ledger open() throws Exception;

    @BeforeEach
    void start() throws Exception {
        ledger = open();
        put("c", 20261105_090000L, "FERROW^MINA", "P2", "A3", "");
        put("a", 20261104_090000L, "MOREAU^INES", "P1", "A1", "HB_1");
        put("b", 20261104_093000L, "MOREAU^ANA", "P1", "A2", "HB_2");
        put("d", 20261106_090000L, "moreau", "P3", "A4", "");
        put("e", 20261106_090000L, "MØREAU", "P3", "A5", "HB_1");
    }

    @AfterEach
    void stop() {
        if (ledger != null) {
            ledger.close();
        }
    }

    @Test
    void all_entries_come_in_the_order_of_their_start() {
        assertThat(all(WorklistSearch.ALL, 100)).containsExactly("a", "b", "c", "d", "e");
    }

    @Test
    void pages_of_any_length_hold_every_entry_once() {
        for (int size = 1; size < 7; size++) {
            assertThat(all(WorklistSearch.ALL, size)).containsExactly("a", "b", "c", "d", "e");
            assertThat(all(name("M", 0, LAST), size)).containsExactly("b", "a", "e");
            assertThat(all(patient("P1"), size)).containsExactlyInAnyOrder("a", "b");
        }
    }

    @Test
    void a_start_lies_between_both_bounds_which_belong_to_it() {
        assertThat(all(name("", 20261104_093000L, 20261105_090000L), 1)).containsExactly("b", "c");
        assertThat(all(name("", 20261105_000000L, LAST), 100)).containsExactly("c", "d", "e");
        assertThat(all(name("", 0, 20261104_090000L), 100)).containsExactly("a");
    }

    @Test
    void a_name_begins_so_letter_by_letter_whatever_the_stores_language() {
        assertThat(all(name("MOREAU", 0, LAST), 100)).containsExactly("b", "a");
        assertThat(all(name("MOREAU^I", 0, LAST), 100)).containsExactly("a");
        assertThat(all(name("MØ", 0, LAST), 100)).containsExactly("e");
        assertThat(all(name("MOREAU^J", 0, LAST), 100)).isEmpty();
    }

    @Test
    void name_and_start_narrow_together_however_rows_are_found() {
        assertThat(all(name("MOREAU", 20261104_091500L, LAST), 1)).containsExactly("b");
        assertThat(all(name("M", 20261104_000000L, 20261104_235959L), 1))
                .containsExactlyInAnyOrder("a", "b");
    }

    /** Rows that only look alike may come too: what is found has yet to be matched. */
    @Test
    void part_of_a_name_is_found_wherever_it_stands() throws Exception {
        put("f", 20261107_090000L, "O_NEIL^50%!", "P4", "A6", "");
        for (int size = 1; size < 4; size++) {
            assertThat(all(within("^A", "", 0, LAST), size)).containsExactly("b");
            assertThat(all(within("INA", "", 0, LAST), size)).containsExactly("c");
            assertThat(all(within("NES", "MOR", 0, LAST), size)).containsExactly("a");
            assertThat(all(within("N", "", 20261104_000000L, 20261105_235959L), size))
                    .containsExactly("a", "b", "c");
            assertThat(all(within("O_N", "", 0, LAST), size)).containsExactly("f");
            assertThat(all(within("0%!", "", 0, LAST), size)).containsExactly("f");
            assertThat(all(within("ØR", "", 0, LAST), size)).containsExactly("e");
        }
    }

    @Test
    void number_and_patient_find_theirs() {
        assertThat(all(search("", 0, LAST, "", "A2", ""), 100)).containsExactly("b");
        assertThat(all(search("", 0, LAST, "P1", "A3", ""), 100)).isEmpty();
        assertThat(all(patient("P9"), 100)).isEmpty();
    }

    @Test
    void a_station_sees_its_own_and_those_for_any() {
        assertThat(all(search("", 0, LAST, "", "", "HB_1"), 2)).containsExactly("a", "c", "d", "e");
        assertThat(all(search("", 0, LAST, "", "", "HB_9"), 2)).containsExactly("c", "d");
    }

    @Test
    void an_entry_put_again_takes_the_place_of_the_one_before() throws Exception {
        put("a", 20261201_090000L, "QUILL^OTTO", "P7", "A7", "HB_7");
        assertThat(all(WorklistSearch.ALL, 2)).containsExactly("b", "c", "d", "e", "a");
        assertThat(all(patient("P1"), 2)).containsExactly("b");
        assertThat(all(patient("P7"), 2)).containsExactly("a");
    }

    @Test
    void a_removed_entry_is_gone_and_one_that_is_not_there_is_no_fault() throws Exception {
        write(tables -> tables.worklist().remove("a"));
        write(tables -> tables.worklist().remove("nobody"));
        assertThat(all(WorklistSearch.ALL, 100)).containsExactly("b", "c", "d", "e");
    }

    @Test
    void an_entry_of_a_unit_that_fails_never_was() {
        var failed =
                ledger.write(
                        tables -> {
                            tables.worklist().remove("a");
                            throw new IllegalStateException("no");
                        });
        assertThat(failed).failsWithin(30, TimeUnit.SECONDS);
        assertThat(all(WorklistSearch.ALL, 100)).contains("a");
    }

    private void put(
            String id, long start, String name, String patient, String accession, String station)
            throws Exception {
        var entry = new Entry(id, start, name, patient, accession, station, id.getBytes());
        write(tables -> tables.worklist().put(entry));
    }

    private void write(Consumer<Tables> change) throws Exception {
        ledger.write(
                        tables -> {
                            change.accept(tables);
                            return null;
                        })
                .get(30, TimeUnit.SECONDS);
    }

    private List<String> all(WorklistSearch search, int size) {
        var found = new ArrayList<String>();
        Found last = null;
        List<Found> page;
        do {
            Found after = last;
            page = ledger.read(tables -> tables.worklist().page(search, after, size));
            page.forEach(row -> found.add(new String(row.item())));
            last = page.isEmpty() ? last : page.get(page.size() - 1);
        } while (page.size() == size);
        return found;
    }

    private static WorklistSearch within(String part, String beginning, long from, long to) {
        return new WorklistSearch(from, to, beginning, part, given(""), given(""), given(""));
    }

    private static WorklistSearch name(String beginning, long from, long to) {
        return search(beginning, from, to, "", "", "");
    }

    private static WorklistSearch patient(String id) {
        return search("", 0, LAST, id, "", "");
    }

    private static WorklistSearch search(
            String name, long from, long to, String patient, String accession, String station) {
        return new WorklistSearch(
                from, to, name, "", given(patient), given(accession), given(station));
    }

    private static Optional<String> given(String text) {
        return Optional.of(text).filter(t -> !t.isEmpty());
    }
}

package dev.isoline.dicom.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Collections;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ValuesTest {

    /** PS3.8 9.3.2: leading and trailing spaces do not count, 16 spaces are no title. */
    @Test
    void spaces_around_an_ae_title_do_not_count() {
        assertThat(new AeTitle("  HARROW BAY    ")).isEqualTo(new AeTitle("HARROW BAY"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "                ", "SEVENTEEN_LETTERS", "BACK\\SLASH", "Lücke", "a\tb"})
    void what_is_no_ae_title_is_refused(String value) {
        assertThatIllegalArgumentException().isThrownBy(() -> new AeTitle(value));
    }

    /** PS3.8 9.3.2.2: context ids are the odd numbers from 1 to 255. */
    @Test
    void an_association_has_at_most_128_contexts() {
        assertThat(Offer.storage(Collections.nCopies(64, "1.2.3")).contexts()).hasSize(128);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Offer.storage(Collections.nCopies(65, "1.2.3")));
    }

    /** PS3.8 table 9-21. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1|1|7|rejected permanently by the service user: called AE title not recognised",
                "2|3|2|rejected for now by the service provider (presentation): local limit exceeded",
                "1|2|2|rejected permanently by the service provider (ACSE): protocol version not supported",
                "9|8|7|rejected with result 9 by the source 8: reason 7"
            })
    void a_rejection_says_who_and_why(int result, int source, int reason, String words) {
        var rejection = new Rejection(result, source, reason);
        assertThat(rejection).hasMessage("association " + words);
        assertThat(rejection.isTransient()).isEqualTo(result == 2);
    }

    /** PS3.8 table 9-26. */
    @Test
    void an_abort_says_who_and_why() {
        assertThat(new Abort(true, 2, 2))
                .hasMessage("association aborted by the peer's service provider: unexpected PDU");
        assertThat(new Abort(false, 0, 0, "shutting down"))
                .hasMessage("association aborted by our service user; shutting down");
    }

    @Test
    void a_listener_without_callers_knows_everybody() {
        var known = new Admission(Set.of(new AeTitle("REC1")), false, 1);
        assertThat(known.knows(new AeTitle("REC1"))).isTrue();
        assertThat(known.knows(new AeTitle("REC2"))).isFalse();
        assertThat(Admission.ANYBODY.knows(new AeTitle("REC2"))).isTrue();
    }
}

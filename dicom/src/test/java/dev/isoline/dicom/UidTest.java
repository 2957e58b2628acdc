package dev.isoline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** PS3.5 chapter 9 and annex B.2. */
class UidTest {

    /** The UUID of PS3.5 B.2's example. */
    @Test
    void a_uuid_is_a_decimal_under_2_25() {
        assertThat(Uid.of(UUID.fromString("f81d4fae-7dec-11d0-a765-00a0c91e6bf6")))
                .isEqualTo("2.25.329800735698586629295641978511506172918");
    }

    @Test
    void the_largest_uuid_has_39_digits_and_the_smallest_one() {
        assertThat(Uid.of(new UUID(-1, -1))).hasSize(5 + 39).matches(Uid::isValid);
        assertThat(Uid.of(new UUID(0, 0))).isEqualTo("2.25.0").matches(Uid::isValid);
        assertThat(Uid.of("a", "b")).isEqualTo(Uid.of("a", "b")).isNotEqualTo(Uid.of("ab"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"1.02.3", "1..2", ".1", "1.", "", "1.2a", "01.2"})
    void components_have_no_leading_zero(String uid) {
        assertThat(Uid.isValid(uid)).isFalse();
    }

    @Test
    void a_uid_has_at_most_64_characters() {
        assertThat(Uid.isValid("1." + "2".repeat(62))).isTrue();
        assertThat(Uid.isValid("1." + "2".repeat(63))).isFalse();
    }
}

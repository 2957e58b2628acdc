package dev.isoline.dicom.spi;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StatusTest {

    /** PS3.7 2024e annex C, the convention at its head. */
    @ParameterizedTest
    @CsvSource({
        "0000, SUCCESS", "0001, WARNING", "B000, WARNING", "BFFF, WARNING", "0107, WARNING",
        "0116, WARNING", "A000, FAILURE", "A7FF, FAILURE", "C123, FAILURE", "0110, FAILURE",
        "0213, FAILURE", "FE00, CANCEL", "FF00, PENDING", "FF01, PENDING", "FF02, FAILURE"
    })
    void a_code_has_the_class_of_annex_c(String code, StatusClass statusClass) {
        assertThat(Status.of(Integer.parseInt(code, 16)).statusClass()).isEqualTo(statusClass);
    }

    /** PS3.4 B.2.3: A7xx, A9xx and Cxxx are ranges. */
    @Test
    void every_code_of_a_range_has_its_name() {
        assertThat(Status.of(0xA7C1)).hasToString("A7C1H out of resources");
        assertThat(Status.of(0xA901).because("wrong IOD"))
                .hasToString("A901H data set does not match SOP class: wrong IOD");
    }

    @Test
    void a_warning_counts_as_performed_but_not_as_success() {
        assertThat(Status.COERCION.isPerformed()).isTrue();
        assertThat(Status.COERCION.isSuccess()).isFalse();
        assertThat(Status.OUT_OF_RESOURCES.isPerformed()).isFalse();
    }
}

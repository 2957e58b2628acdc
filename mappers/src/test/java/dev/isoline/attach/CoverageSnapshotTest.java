package dev.isoline.attach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.Coverage.CoverageStatus;
import org.junit.jupiter.api.Test;

class CoverageSnapshotTest {

    private final Coverage old = coverage("old");
    private final Coverage kept = coverage("kept");

    @Test
    void a_message_without_insurance_changes_nothing() {
        assertThat(CoverageSnapshot.replace(List.of(old), List.of())).isEmpty();
    }

    @Test
    void what_is_no_longer_listed_is_cancelled() {
        List<Coverage> changed = CoverageSnapshot.replace(List.of(old, kept), List.of(kept));

        assertThat(changed).hasSize(2);
        assertThat(changed.get(0)).isSameAs(kept);
        assertThat(changed.get(1).getIdPart()).isEqualTo("old");
        assertThat(changed.get(1).getStatus()).isEqualTo(CoverageStatus.CANCELLED);
        assertThat(old.getStatus()).isEqualTo(CoverageStatus.ACTIVE);
    }

    @Test
    void the_lowest_order_pays_first() {
        Coverage second = coverage("second").setOrder(2);
        Coverage first = coverage("first").setOrder(1);

        assertThat(CoverageSnapshot.active(List.of(old, second, first)))
                .containsExactly(first, second, old);
        assertThat(CoverageSnapshot.primary(List.of(old, second, first))).contains(first);
    }

    private static Coverage coverage(String id) {
        var coverage = new Coverage().setStatus(CoverageStatus.ACTIVE);
        coverage.setId(id);
        return coverage;
    }
}

package dev.isoline.conformance.demo;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.conformance.validator.FhirJudge;
import dev.isoline.conformance.validator.Finding;
import dev.isoline.conformance.validator.Hl7v2Judge;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the demo's clinics send is itself right, by HAPI's validators. */
class TemplatesTest {

    @ParameterizedTest
    @ValueSource(strings = {"harrow-bay-order.hl7", "harrow-bay-adt.hl7"})
    void harrow_bay_sends_valid_hl7_v2(String name) throws IOException {
        assertThat(new Hl7v2Judge().judge(name, Templates.hl7v2(name)).findings()).isEmpty();
    }

    /**
     * MB is a v2-0203 code that R4's extensible value set does not list: a warning, US Core uses
     * it.
     */
    @Test
    void sable_point_sends_a_valid_transaction() throws IOException {
        String name = "sable-point-order.json";
        assertThat(FhirJudge.one().judge(name, Templates.text(name)).findings())
                .noneMatch(Finding::isError)
                .allMatch(f -> f.text().endsWith("v2-0203#MB)"));
    }
}

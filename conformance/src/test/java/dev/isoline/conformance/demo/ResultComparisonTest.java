package dev.isoline.conformance.demo;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import dev.isoline.synth.EcgPlan;
import dev.isoline.synth.Noise;
import dev.isoline.synth.Synthesiser;
import dev.isoline.synth.Truth;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.hl7.fhir.r4.model.Bundle;
import org.junit.jupiter.api.Test;

class ResultComparisonTest {

    private static final EcgPlan PLAN =
            new EcgPlan(
                    250,
                    120,
                    List.of("MLII"),
                    3,
                    new EcgPlan.Rate(70, 70, 0.03, 0.02),
                    Set.of(20),
                    Set.of(),
                    new EcgPlan.Pause(50, 2.5),
                    Noise.NONE);

    private static final Truth TRUTH = new Synthesiser(PLAN).truth();

    private final Story story = new Story(new PrintWriter(new StringWriter()));

    @Test
    void the_truth_itself_is_accepted() {
        compare(truth());
        assertThat(story.failures()).isEmpty();
    }

    @Test
    void every_value_outside_its_tolerance_is_named() {
        for (Metric metric : Metric.values()) {
            Map<String, Double> values = truth();
            double off = metric.truth(TRUTH) + metric.tolerance(TRUTH, true) * 1.01;
            values.put(metric.codes().get(0), off);
            compare(values);
        }
        assertThat(story.failures()).hasSize(Metric.values().length);
        assertThat(story.failures().get(0)).startsWith("report: mean heart rate is ");
    }

    @Test
    void beats_the_program_classified_may_be_two_off() {
        assertThat(Metric.VENTRICULAR.tolerance(TRUTH, false))
                .isEqualTo(Metric.VENTRICULAR.tolerance(TRUTH, true) + 2);
        assertThat(Metric.PAUSES.tolerance(TRUTH, false))
                .isEqualTo(Metric.PAUSES.tolerance(TRUTH, true));
    }

    @Test
    void a_value_left_out_is_named() {
        Map<String, Double> values = truth();
        values.remove("76638-6");
        compare(values);
        assertThat(story.failures()).containsExactly("report states no longest R-R interval");
    }

    @Test
    void values_are_read_from_observations_and_components_and_from_obx() {
        String json =
                """
                {"resourceType":"Bundle","type":"transaction","entry":[{"resource":
                 {"resourceType":"Observation","status":"preliminary","code":{"text":"rate"},"component":[
                  {"code":{"coding":[{"system":"http://loinc.org","code":"41924-2"}]},
                   "valueQuantity":{"value":71.5}},
                  {"code":{"coding":[{"code":"pause-count"}]},"valueInteger":2}]}}]}""";
        var bundle = FhirContext.forR4Cached().newJsonParser().parseResource(Bundle.class, json);
        assertThat(ReportedValues.of(bundle).of(Metric.MEAN_RATE)).contains(71.5);
        assertThat(ReportedValues.of(bundle).of(Metric.PAUSES)).contains(2.0);

        String oru =
                "MSH|^~\\&|A|B|C|D|||ORU^R01|1|P|2.5.1\rOBX|1|NM|41924-2^mean^LN||71.5|/min\r"
                        + "OBX|2|ED|18754-2^study^LN||^application^pdf^Base64^AA\r";
        var values = ReportedValues.of(oru.getBytes(StandardCharsets.UTF_8));
        assertThat(values.byCode()).containsExactly(Map.entry("41924-2", 71.5));
    }

    private static Map<String, Double> truth() {
        var values = new HashMap<String, Double>();
        Arrays.stream(Metric.values()).forEach(m -> values.put(m.codes().get(0), m.truth(TRUTH)));
        return values;
    }

    private void compare(Map<String, Double> values) {
        var recording =
                new DemoRecording("X-1", Path.of("x"), Path.of("x"), PLAN, List.of(), TRUTH, true);
        new ResultComparison(story).compare(recording, "report", new ReportedValues(values));
    }
}

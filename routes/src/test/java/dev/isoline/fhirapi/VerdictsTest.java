package dev.isoline.fhirapi;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import dev.isoline.resources.FhirJson;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.junit.jupiter.api.Test;

/** Definitions read on demand lead to the verdicts that all of them read at once lead to. */
class VerdictsTest {

    private static final Path SAMPLES = Path.of("..", "sample-messages");
    private static final Pattern VALUE = Pattern.compile(": \"([^\"]*)\"");
    private static final int DAMAGED_PER_SAMPLE = 4;

    private final FhirValidation ours = new FhirValidation();
    private final FhirValidation allAtOnce =
            new FhirValidation(
                    new FhirInstanceValidator(
                            FhirValidation.chain(
                                    new DefaultProfileValidationSupport(FhirJson.CONTEXT))));

    @Test
    void sample_messages_and_damaged_ones_are_judged_alike() {
        var bodies = new ArrayList<String>();
        for (String sample : samples()) {
            bodies.add(sample);
            bodies.add(xml(sample));
            bodies.addAll(damaged(sample));
        }
        assertThat(bodies).hasSizeGreaterThan(80);
        long refused = bodies.stream().filter(this::isRefusedByBoth).count();
        assertThat(refused).isGreaterThan(20);
    }

    @Test
    void what_no_order_brings_is_judged_alike() {
        List.of(
                        "{\"resourceType\":\"Nothing\"}",
                        "{\"resourceType\":\"Questionnaire\",\"status\":\"x\",\"item\":[{\"linkId\":\"1\"}]}",
                        "{\"resourceType\":\"Observation\",\"meta\":{\"profile\":"
                                + "[\"http://hl7.org/fhir/StructureDefinition/bodyweight\"]},\"status\":\"final\"}",
                        "{\"resourceType\":\"Patient\",\"meta\":{\"profile\":"
                                + "[\"http://hl7.org/fhir/StructureDefinition/Patient|4.0.1\"]}}",
                        "{\"resourceType\":\"Patient\",\"extension\":[{\"url\":"
                                + "\"http://hl7.org/fhir/StructureDefinition/patient-birthPlace\",\"valueString\":\"?\"}]}",
                        "{\"resourceType\":\"StructureDefinition\",\"url\":\"urn:x\",\"name\":\"X\",\"status\":\"draft\","
                                + "\"kind\":\"resource\",\"abstract\":false,\"type\":\"Patient\"}",
                        "<Patient xmlns=\"http://hl7.org/fhir\"><gender value=\"?\"/></Patient>",
                        "<Nothing xmlns=\"http://hl7.org/fhir\"/>")
                .forEach(this::isRefusedByBoth);
    }

    private boolean isRefusedByBoth(String body) {
        String expected = FhirJson.encode(allAtOnce.faults(body));
        assertThat(FhirJson.encode(ours.faults(body))).as(body).isEqualTo(expected);
        return expected.contains("issue");
    }

    private static String xml(String json) {
        return FhirJson.CONTEXT.newXmlParser().encodeResourceToString(FhirJson.decode(json));
    }

    /** The sample with one value after the other no longer what it was. */
    private static List<String> damaged(String sample) {
        var places = VALUE.matcher(sample).results().map(r -> r.start(1)).toList();
        int step = Math.max(1, places.size() / DAMAGED_PER_SAMPLE);
        var damaged = new ArrayList<String>();
        for (int i = 0; i < places.size(); i += step) {
            Matcher value = VALUE.matcher(sample);
            value.find(places.get(i) - 3);
            damaged.add(sample.substring(0, value.start(1)) + "?" + sample.substring(value.end(1)));
        }
        return damaged;
    }

    private static List<String> samples() {
        try (var files = Files.walk(SAMPLES)) {
            return files.filter(f -> f.toString().endsWith(".json"))
                    .sorted()
                    .map(VerdictsTest::text)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

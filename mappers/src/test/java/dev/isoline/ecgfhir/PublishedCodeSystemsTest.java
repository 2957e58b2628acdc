package dev.isoline.ecgfhir;

import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.fhir.ReferenceValidator;
import dev.isoline.fhir.SampleFile;
import dev.isoline.fhir.Systems;
import dev.isoline.order.OrderState;
import java.io.IOException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeSystem;
import org.hl7.fhir.r4.model.CodeSystem.CodeSystemContentMode;
import org.hl7.fhir.r4.model.Enumerations.PublicationStatus;
import org.junit.jupiter.api.Test;

/** The code systems published in conformance hold what the mappers write, code by code. */
class PublishedCodeSystemsTest {

    private static final String FOLDER = "conformance/src/main/resources/fhir/";

    @Test
    void ambulatory_ecg_metrics_are_published() throws IOException {
        CodeSystem system = codeSystem(Systems.METRIC, "AmbulatoryEcgMetric");
        system.setTitle("What is measured in an ambulatory ECG");
        metrics().forEach((c, display) -> system.addConcept().setCode(c).setDisplay(display));

        check(system, "CodeSystem-ambulatory-ecg-metric.json");
    }

    /** By code: pauses have rows of their own among the metrics, which come first. */
    private static Map<String, String> metrics() {
        var metrics = new LinkedHashMap<String, String>();
        Stream.of(Arrays.stream(AmbulatoryEcgMetric.values()), EctopyMetric.all())
                .flatMap(metric -> metric)
                .forEach(metric -> metrics.putIfAbsent(metric.code(), metric.display()));
        for (var kind : EpisodeKind.values()) {
            metrics.putIfAbsent(EpisodeConcept.code(kind), EpisodeConcept.display(kind));
        }
        EpisodeMetric.all().forEach(m -> metrics.putIfAbsent(m.code(), m.display()));
        return metrics;
    }

    @Test
    void order_business_statuses_are_published() throws IOException {
        CodeSystem system = codeSystem(Systems.BUSINESS_STATUS, "OrderBusinessStatus");
        system.setTitle("Where an order for ambulatory ECG monitoring stands");
        Arrays.stream(OrderState.values())
                .forEach(
                        s ->
                                system.addConcept()
                                        .setCode(s.businessStatus())
                                        .setDisplay(s.businessStatus().replace('-', ' '))
                                        .setDefinition("Of the order: " + s.words() + "."));

        check(system, "CodeSystem-order-business-status.json");
    }

    private static void check(CodeSystem system, String file) throws IOException {
        system.setCount(system.getConcept().size());
        ReferenceValidator.assertValid(system);
        SampleFile.assertSame(FOLDER + file, system);
    }

    private static CodeSystem codeSystem(String url, String name) {
        var system = new CodeSystem().setUrl(url).setName(name).setVersion("0.1.0");
        system.setId(url.substring(url.lastIndexOf('/') + 1));
        system.setStatus(PublicationStatus.ACTIVE).setContent(CodeSystemContentMode.COMPLETE);
        system.setExperimental(false).setCaseSensitive(true);
        return system;
    }
}

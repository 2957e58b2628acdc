package dev.isoline.conformance.demo;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.yaml.snakeyaml.Yaml;

class GatewayConfigurationTest {

    @Test
    void each_clinic_is_reached_by_hl7_v2_and_by_fhir() {
        String yaml =
                new GatewayConfiguration(
                                new DemoFolder(Path.of("/x")),
                                1,
                                2,
                                3,
                                4,
                                "http://t",
                                "mllp://h",
                                "http://h",
                                "mllp://s",
                                "http://s")
                        .yaml();
        Map<String, Object> parsed = new Yaml().load(yaml);
        JsonNode isoline = new ObjectMapper().valueToTree(parsed).get("isoline");
        assertThat(isoline.at("/mllp/port").asInt()).isEqualTo(2);
        assertThat(isoline.at("/dicom/port").asInt()).isEqualTo(3);
        assertThat(isoline.at("/dicom/peers/tern-street-archive/port").asInt()).isEqualTo(4);
        for (JsonNode sender : isoline.get("senders")) {
            assertThat(sender.get("destinations"))
                    .extracting(d -> isoline.at("/destinations/" + d.asText() + "/kind").asText())
                    .containsExactly("mllp", "fhir");
        }
    }
}

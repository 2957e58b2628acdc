package dev.isoline.fhirapi;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.order.StableId;
import dev.isoline.resources.FhirJson;
import dev.isoline.resources.ResourceStore;
import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CapabilityStatement;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementRestResourceComponent;
import org.hl7.fhir.r4.model.CapabilityStatement.TypeRestfulInteraction;
import org.hl7.fhir.r4.model.Resource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** FHIR R4, 5.2: what /fhir/metadata declares works, and nothing else does. */
class CapabilityStatementTest extends RunningGateway {

    private static final String OTHER = "no-such-value";

    private final Map<String, String> samples = new LinkedHashMap<>();
    private final Map<String, String> values = new LinkedHashMap<>();
    private CapabilityStatement statement;

    @BeforeEach
    void samples() {
        String number = Sample.number();
        String patient =
                client().create().resource(Sample.patient(number)).execute().getId().getIdPart();
        String order = "order-of-" + number;
        String who = "\"subject\":{\"reference\":\"Patient/" + patient + "\"}";
        String code =
                "\"code\":{\"coding\":[{\"system\":\"urn:oid:2.999.4\",\"code\":\"c"
                        + number
                        + "\"}]}";
        String basedOn = "\"basedOn\":[{\"reference\":\"ServiceRequest/" + order + "\"}]";
        sample(
                "Patient",
                "\"name\":[{\"family\":\"Lindqvist" + number + "\"}],\"birthDate\":\"1949-02-28\"");
        sample("ServiceRequest", "\"status\":\"draft\",\"intent\":\"order\"," + who);
        sample(
                "Coverage",
                "\"status\":\"active\",\"beneficiary\":{\"reference\":\"Patient/"
                        + patient
                        + "\"},\"payor\":[{\"reference\":\"Patient/"
                        + patient
                        + "\"}]");
        sample("Observation", "\"status\":\"registered\"," + code + "," + who + "," + basedOn);
        sample("DiagnosticReport", "\"status\":\"registered\"," + code + "," + who + "," + basedOn);
        sample(
                "Task",
                "\"status\":\"rejected\",\"intent\":\"order\",\"for\":{\"reference\":\"Patient/"
                        + patient
                        + "\"},\"focus\":{\"reference\":\"ServiceRequest/"
                        + order
                        + "\"},"
                        + basedOn);
        sample("Organization", "\"name\":\"Harrow Bay Clinic\"");
        sample("Practitioner", "\"active\":true");
        sample("PractitionerRole", "\"active\":true");
        sample("RelatedPerson", "\"patient\":{\"reference\":\"Patient/" + patient + "\"}");
        sample("Condition", who);
        sample(
                "Encounter",
                "\"status\":\"planned\",\"class\":{\"system\":\"http://terminology.hl7.org/CodeSystem/v3-ActCode\",\"code\":\"AMB\"},"
                        + who);
        sample("Device", "\"status\":\"active\"");
        sample("ImagingStudy", "\"status\":\"available\"," + who);
        sample(
                "DocumentReference",
                "\"status\":\"current\",\"content\":[{\"attachment\":{\"url\":\"urn:oid:2.999.5\"}}]");
        samples.put(
                "Provenance",
                "{\"resourceType\":\"Provenance\",\"target\":[{\"reference\":\"Patient/"
                        + patient
                        + "\"}],\"recorded\":\"2026-11-25T00:00:00Z\",\"agent\":[{\"who\":{\"display\":\"Isoline\"}}]}");
        values.putAll(
                Map.of(
                        "subject", "Patient/" + patient,
                        "patient", patient,
                        "beneficiary", "Patient/" + patient,
                        "focus", "ServiceRequest/" + order,
                        "based-on", "ServiceRequest/" + order,
                        "code", "urn:oid:2.999.4|c" + number,
                        "family", "LINDQVIST" + number,
                        "birthdate", "1949-02"));
        statement = client().capabilities().ofType(CapabilityStatement.class).execute();
        order(order, patient);
    }

    @Test
    void every_declared_interaction_works() {
        for (var type : statement.getRestFirstRep().getResource()) {
            for (var interaction : type.getInteraction()) {
                var response = exercise(type, interaction.getCode());
                assertThat(response.statusCode())
                        .as(type.getType() + " " + interaction.getCode() + " " + response.body())
                        .isLessThan(300);
            }
        }
    }

    @Test
    void every_undeclared_interaction_of_every_type_is_refused() {
        for (String name : FhirJson.CONTEXT.getResourceTypes()) {
            var type = declared(name);
            for (var interaction : EnumSet.allOf(TypeRestfulInteraction.class)) {
                if (interaction != TypeRestfulInteraction.NULL && !has(type, interaction)) {
                    assertThat(exercise(type, interaction).statusCode())
                            .as(name + " " + interaction)
                            .isBetween(400, 499);
                }
            }
        }
    }

    @Test
    void every_declared_search_parameter_finds_its_resource_and_no_other() {
        for (var type : statement.getRestFirstRep().getResource()) {
            String id = type.getSearchParam().isEmpty() ? "" : stored(type.getType());
            for (var parameter : type.getSearchParam()) {
                String name = parameter.getName();
                String address = type.getType() + "?" + name + "=";
                assertThat(ids(address + encoded(value(type.getType(), name, id))))
                        .as(address)
                        .contains(id);
                String other = name.equals("birthdate") ? "1850-01-01" : OTHER;
                assertThat(ids(address + other)).as(address + other).isEmpty();
            }
        }
    }

    @Test
    void an_undeclared_search_parameter_is_refused() {
        for (var type : statement.getRestFirstRep().getResource()) {
            var response =
                    send("GET", "/fhir/" + type.getType() + "?_lastUpdated=2026-01-01", null);
            assertThat(response.statusCode()).as(type.getType()).isBetween(400, 499);
        }
    }

    @Test
    void conditional_writes_are_declared_where_they_work() {
        for (var type : statement.getRestFirstRep().getResource()) {
            var json = samples.get(type.getType());
            if (json == null) {
                continue;
            }
            String query = "identifier=urn:oid:2.999.3|" + Sample.number();
            var create = send("POST", "/fhir/" + type.getType(), json, "If-None-Exist", query);
            assertThat(create.statusCode() < 300 || type.getType().equals("Patient"))
                    .as(type.getType() + create.body())
                    .isEqualTo(type.getConditionalCreate() || type.getType().equals("Patient"));
            var update = send("PUT", "/fhir/" + type.getType() + "?" + encodedQuery(json), json);
            assertThat(update.statusCode() < 300)
                    .as(type.getType() + update.body())
                    .isEqualTo(type.getConditionalUpdate());
            assertThat(type.hasConditionalDelete()).as(type.getType()).isFalse();
        }
    }

    @Test
    void system_interactions_other_than_transaction_are_refused() {
        assertThat(statement.getRestFirstRep().getInteraction())
                .extracting(i -> i.getCode().toCode())
                .containsExactly("transaction");
        var batch = "{\"resourceType\":\"Bundle\",\"type\":\"batch\"}";
        assertThat(send("POST", "/fhir", batch).statusCode()).isEqualTo(422);
        assertThat(send("GET", "/fhir/_history", null).statusCode()).isBetween(400, 499);
        assertThat(send("GET", "/fhir?_id=1", null).statusCode()).isBetween(400, 499);
    }

    @Test
    void no_operation_and_no_patch_is_declared() {
        assertThat(statement.getPatchFormat()).isEmpty();
        assertThat(statement.getRestFirstRep().getOperation()).isEmpty();
        assertThat(statement.getRestFirstRep().getResource())
                .allSatisfy(
                        r -> {
                            assertThat(r.getOperation()).isEmpty();
                            assertThat(r.getSearchInclude()).isEmpty();
                            assertThat(r.getSearchRevInclude()).isEmpty();
                        });
    }

    private HttpResponse<String> exercise(
            CapabilityStatementRestResourceComponent type, TypeRestfulInteraction interaction) {
        String name = type.getType();
        String base = "/fhir/" + name;
        String id = samples.containsKey(name) ? stored(name) : "1";
        String json = "{\"resourceType\":\"" + name + "\"}";
        return switch (interaction) {
            case READ -> send("GET", base + "/" + id, null);
            case VREAD -> send("GET", base + "/" + id + "/_history/1", null);
            case UPDATE -> send("PUT", base + "/" + id, withId(name, id));
            case DELETE -> send("DELETE", base + "/" + id, null);
            case PATCH -> send("PATCH", base + "/" + id, "[]");
            case HISTORYINSTANCE -> send("GET", base + "/" + id + "/_history", null);
            case HISTORYTYPE -> send("GET", base + "/_history", null);
            case SEARCHTYPE -> send("GET", base, null);
            case CREATE -> send("POST", base, fresh(name, json));
            default -> throw new IllegalArgumentException(interaction.toCode());
        };
    }

    private CapabilityStatementRestResourceComponent declared(String type) {
        return statement.getRestFirstRep().getResource().stream()
                .filter(r -> r.getType().equals(type))
                .findFirst()
                .orElseGet(() -> new CapabilityStatementRestResourceComponent().setType(type));
    }

    private static boolean has(
            CapabilityStatementRestResourceComponent type, TypeRestfulInteraction interaction) {
        return type.getInteraction().stream().anyMatch(i -> i.getCode() == interaction);
    }

    /** The sample as the gateway would have stored it; every type's own id. */
    private String stored(String type) {
        String id = StableId.of(type, values.get("patient"));
        Resource resource = FhirJson.decode(samples.get(type));
        resource.setId(id);
        return ledger.write(
                        tables -> {
                            if (!ResourceStore.exists(tables, type, id)) {
                                ResourceStore.put(tables, resource, Instant.EPOCH);
                            }
                            return id;
                        })
                .join();
    }

    private void order(String id, String patient) {
        var order = Sample.order(id, "Patient/" + patient);
        order.setId(id);
        ledger.write(tables -> ResourceStore.put(tables, order, Instant.EPOCH)).join();
    }

    private void sample(String type, String content) {
        String identifier =
                "\"identifier\":[{\"system\":\"urn:oid:2.999.3\",\"value\":\""
                        + Sample.number()
                        + "\"}]";
        samples.put(type, "{\"resourceType\":\"" + type + "\"," + identifier + "," + content + "}");
    }

    private String withId(String type, String id) {
        String json = samples.getOrDefault(type, "{\"resourceType\":\"" + type + "\"}");
        return json.replaceFirst("\\{", "{\"id\":\"" + id + "\",");
    }

    private String fresh(String type, String otherwise) {
        return samples.getOrDefault(type, otherwise)
                .replaceAll("\"value\":\"N\\d+\"", "\"value\":\"" + Sample.number() + "\"");
    }

    private String value(String type, String parameter, String id) {
        return switch (parameter) {
            case "_id" -> id;
            case "identifier" -> identifier(type);
            case "status" -> samples.get(type).replaceAll(".*\"status\":\"([a-z]+)\".*", "$1");
            default -> values.get(parameter);
        };
    }

    private String identifier(String type) {
        return "urn:oid:2.999.3|"
                + samples.get(type).replaceAll(".*?\"value\":\"([^\"]+)\".*", "$1");
    }

    private String encodedQuery(String json) {
        String type = FhirJson.decode(json).fhirType();
        return json.contains("\"identifier\"")
                ? "identifier=" + encoded(identifier(type))
                : "_id=x";
    }

    private Set<String> ids(String query) {
        var response = send("GET", "/fhir/" + query + "&_count=200", null);
        assertThat(response.statusCode()).as(query + response.body()).isEqualTo(200);
        return ((Bundle) FhirJson.decode(response.body()))
                .getEntry().stream()
                        .map(e -> e.getResource().getIdElement().getIdPart())
                        .collect(java.util.stream.Collectors.toSet());
    }

    private static String encoded(String value) {
        return URLEncoder.encode(value, StandardCharsets.UTF_8);
    }
}

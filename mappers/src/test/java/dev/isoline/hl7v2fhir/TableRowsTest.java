package dev.isoline.hl7v2fhir;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.hl7v2fhir.table.Table0001;
import dev.isoline.hl7v2fhir.table.Table0002;
import dev.isoline.hl7v2fhir.table.Table0004;
import dev.isoline.hl7v2fhir.table.Table0007;
import dev.isoline.hl7v2fhir.table.Table0038;
import dev.isoline.hl7v2fhir.table.Table0063;
import dev.isoline.hl7v2fhir.table.Table0078;
import dev.isoline.hl7v2fhir.table.Table0085;
import dev.isoline.hl7v2fhir.table.Table0119;
import dev.isoline.hl7v2fhir.table.Table0131;
import dev.isoline.hl7v2fhir.table.Table0136;
import dev.isoline.hl7v2fhir.table.Table0190;
import dev.isoline.hl7v2fhir.table.Table0200;
import dev.isoline.hl7v2fhir.table.Table0201;
import dev.isoline.hl7v2fhir.table.Table0202;
import dev.isoline.hl7v2fhir.table.Table0203;
import dev.isoline.hl7v2fhir.table.Table0485;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Coding;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Each table class row by row against its published concept map (HL7 v2-to-FHIR 1.0.0,
 * tables/*.csv).
 */
class TableRowsTest {

    private static final Path TABLES = Path.of("src/test/resources/dev/isoline/hl7v2fhir/tables");

    // spotless:off
    private static final Map<String, Function<String, Optional<String>>> CODED =
            new TreeMap<>(Map.ofEntries(
                    Map.entry("AdministrativeSex", c -> Table0001.toFhir(c).map(e -> e.toCode())),
                    Map.entry("MaritalStatus", c -> Table0002.toFhir(c).map(TableRowsTest::text)),
                    Map.entry("PatientClass-EncounterClass", c -> Table0004.toFhir(c).map(TableRowsTest::text)),
                    Map.entry("PatientClass-EncounterStatus", c -> Table0004.toStatus(c).map(e -> e.toCode())),
                    Map.entry("AdmissionType", c -> Table0007.toFhir(c).map(TableRowsTest::text)),
                    Map.entry("OrderStatus", c -> Table0038.toFhir(c).map(e -> e.toCode())),
                    Map.entry("Relationship", c -> Table0063.toFhir(c).map(TableRowsTest::text)),
                    Map.entry("InterpretationCodes", c -> Table0078.toFhir(c).map(TableRowsTest::text)),
                    Map.entry("ObservationResultStatusCodesInterpretation", c -> Table0085.toFhir(c).map(e -> e.toCode())),
                    Map.entry("OrderControlCode-ServiceRequest.status", c -> Table0119.toFhir(c).map(e -> e.toCode())),
                    Map.entry("ContactRole", c -> Table0131.toFhir(c).map(TableRowsTest::text)),
                    Map.entry("YesNoIndicator", c -> Table0136.toFhir(c).map(String::valueOf)),
                    Map.entry("AddressType-Type", c -> Table0190.toType(c).map(e -> e.toCode())),
                    Map.entry("AddressType-Use", c -> Table0190.toUse(c).map(e -> e.toCode())),
                    Map.entry("NameType", c -> Table0200.toFhir(c).map(e -> e.toCode())),
                    Map.entry("TelecommunicationUseCode", c -> Table0201.toFhir(c).map(e -> e.toCode())),
                    Map.entry("TelecommunicationEquipmentType", TableRowsTest::equipment),
                    Map.entry("IdentifierType", c -> Optional.ofNullable(text(Table0203.toFhir(c).getCodingFirstRep()))),
                    Map.entry("ExtendedPriorityCodes", c -> Table0485.toFhir(c).map(e -> e.toCode()))));

    /** Rows where we leave the published map, with the target we use instead. */
    private static final Map<String, String> OUR_OWN =
            Map.of(
                    "ObservationResultStatusCodesInterpretation/R", "preliminary",
                    "ObservationResultStatusCodesInterpretation/S", "preliminary",
                    "ObservationResultStatusCodesInterpretation/U", "final",
                    "ObservationResultStatusCodesInterpretation/V", "final",
                    "IdentifierType/NNxxx", "");   // a pattern, not a code: NN and three letters
    // spotless:on

    @TestFactory
    Stream<DynamicTest> a_table_maps_each_code_as_published() throws IOException {
        return CODED.entrySet().stream()
                .map(
                        e ->
                                DynamicTest.dynamicTest(
                                        e.getKey(), () -> check(e.getKey(), e.getValue())));
    }

    @Test
    void every_published_table_in_the_project_is_checked() throws IOException {
        try (var files = Files.list(TABLES)) {
            assertThat(files.map(f -> f.getFileName().toString().replace(".csv", "")))
                    .containsExactlyInAnyOrderElementsOf(CODED.keySet());
        }
    }

    private static void check(String name, Function<String, Optional<String>> table)
            throws IOException {
        for (String line :
                Files.readAllLines(TABLES.resolve(name + ".csv")).stream().skip(2).toList()) {
            String[] row = line.split(",", -1);
            String published =
                    row[2].contains("terminology.hl7.org")
                                    && !name.equals("YesNoIndicator")
                                    && !row[1].isEmpty()
                            ? row[2] + "#" + row[1]
                            : row[1];
            String expected = OUR_OWN.getOrDefault(name + "/" + row[0], published);
            assertThat(table.apply(row[0]).orElse(""))
                    .as("%s %s", name, row[0])
                    .isEqualTo(expected);
        }
    }

    private static Optional<String> equipment(String code) {
        return Table0202.isMobile(code)
                ? Optional.of("mobile")
                : Table0202.toFhir(code).map(e -> e.toCode());
    }

    private static String text(Coding coding) {
        return coding.hasSystem() ? coding.getSystem() + "#" + coding.getCode() : null;
    }
}

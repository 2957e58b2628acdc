package dev.isoline.hl7v2fhir;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.order.ContentError;
import java.io.IOException;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Public HL7 v2 messages of many senders (shared/data/hl7v2, most from test suites of open
 * libraries): each order and ADT maps, or is refused for a stated reason, and what it becomes is
 * valid FHIR R4.
 */
class PublicMessagesTest {

    @TestFactory
    Stream<DynamicTest> every_order_and_adt_maps_to_valid_resources_or_is_refused()
            throws IOException {
        Path folder = SharedData.folder("hl7v2");
        return SharedData.files(folder)
                .filter(PublicMessagesTest::isOurs)
                .map(PublicMessagesTest::test);
    }

    private static boolean isOurs(Path file) {
        return readable(SharedData.text(file))
                && SharedData.text(file)
                        .lines()
                        .findFirst()
                        .orElse("")
                        .matches("MSH.*(ORM|OMG\\^|ADT\\^).*");
    }

    private static DynamicTest test(Path file) {
        return DynamicTest.dynamicTest(
                file.getFileName().toString(), () -> check(SharedData.text(file)));
    }

    /**
     * HAPI cannot read encoding characters beyond ASCII that were mangled on the way; that is not
     * mapping.
     */
    private static boolean readable(String text) {
        return text.lines().findFirst().orElse("").chars().limit(9).allMatch(c -> c < 128);
    }

    private static void check(String text) {
        MappedMessage mapped;
        try {
            mapped = Messages.map(text);
        } catch (ContentError refused) {
            assertThat(refused.problems())
                    .allMatch(p -> !p.location().isEmpty() && !p.text().isEmpty());
            return;
        }
        assertThat(FhirValidation.errors(mapped)).isEmpty();
    }
}

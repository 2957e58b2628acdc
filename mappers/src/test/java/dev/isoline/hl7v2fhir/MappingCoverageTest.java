package dev.isoline.hl7v2fhir;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.order.ContentError;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Every row of the published maps (HL7 v2-to-FHIR, hl7.fhir.uv.v2mappings 1.0.0) is either coded,
 * and then proven by a message, or explained on its page under docs/mappings.
 */
class MappingCoverageTest {

    @TestFactory
    Stream<DynamicTest> every_published_row_is_coded_or_explained() {
        return PublishedMap.all().stream()
                .map(m -> DynamicTest.dynamicTest(m.name(), () -> accounted(m)));
    }

    private static void accounted(PublishedMap map) {
        Set<String> coded =
                new HashSet<>(map.coded().stream().map(PublishedMap.Coded::row).toList());
        Set<String> both = new HashSet<>(coded);
        both.retainAll(map.leftOut().keySet());
        assertThat(both).as("rows both coded and left out").isEmpty();
        Set<String> accounted = new HashSet<>(coded);
        accounted.addAll(map.leftOut().keySet());
        assertThat(accounted).as("rows on the page").isEqualTo(map.rows().keySet());
        assertThat(map.leftOut().values()).as("reasons").allMatch(r -> r.length() > 10);
    }

    @TestFactory
    Stream<DynamicTest> a_coded_row_shows_in_the_result_and_only_when_its_field_is_sent() {
        return PublishedMap.all().stream()
                .flatMap(
                        m ->
                                m.coded().stream()
                                        .map(
                                                c ->
                                                        DynamicTest.dynamicTest(
                                                                m.name() + " " + c.row(),
                                                                () -> proven(c))));
    }

    private static void proven(PublishedMap.Coded coded) {
        assertThat(coded.shown().toLowerCase(Locale.ROOT))
                .as("what is shown is the published target %s", coded.target())
                .contains(lastWord(coded.target()));
        List<String> with = FhirLeaves.of(Messages.map(SampleMessage.with(coded.given())));
        List<String> without = leavesUnlessRefused(SampleMessage.without(coded.given()));
        without.forEach(with::remove);
        assertThat(with)
                .as("appears with %s", coded.given())
                .anyMatch(leaf -> shows(leaf, coded.shown()));
    }

    /**
     * {@code payor[1](Organization)} gives {@code organization}; {@code $this} gives nothing to
     * compare.
     */
    private static String lastWord(String target) {
        String path = target.replaceAll("=.*|[\")\\]\\s]", "").replaceAll("\\[[-\\d]*", "");
        String word = path.substring(Math.max(path.lastIndexOf('.'), path.lastIndexOf('(')) + 1);
        return word.startsWith("$") || path.contains("sytem") ? "" : word.toLowerCase(Locale.ROOT);
    }

    /** Without a field an order cannot do without, nothing is shown at all. */
    private static List<String> leavesUnlessRefused(String message) {
        try {
            return FhirLeaves.of(Messages.map(message));
        } catch (ContentError refused) {
            return List.of();
        }
    }

    private static boolean shows(String leaf, String shown) {
        if (shown.endsWith("*")) {
            return leaf.startsWith(shown.substring(0, shown.length() - 1));
        }
        return leaf.equals(shown) || leaf.startsWith(shown + "=") || leaf.startsWith(shown + ".");
    }
}

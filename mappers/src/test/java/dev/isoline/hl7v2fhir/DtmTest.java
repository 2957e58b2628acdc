package dev.isoline.hl7v2fhir;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * DTM, HL7 v2.5.1 ch. 2.A.22: precision is the number of digits sent; FHIR R4 dateTime beside it.
 */
class DtmTest {

    @ParameterizedTest
    @CsvSource({
        "2026, 2026",
        "202611, 2026-11",
        "20261103, 2026-11-03",
        "2026110310, 2026-11-03T10:00:00+01:00",
        "202611031015, 2026-11-03T10:15:00+01:00",
        "20261103101530, 2026-11-03T10:15:30+01:00",
        "20261103101530.25, 2026-11-03T10:15:30.25+01:00",
        "20261103101530-0500, 2026-11-03T10:15:30-05:00",
        "20261103101530+0000, 2026-11-03T10:15:30Z",
        "20260703101500, 2026-07-03T10:15:00+02:00",
        "20260329023000, 2026-03-29T02:30:00+01:00", // skipped: offset before the gap
        "20261025023000, 2026-10-25T02:30:00+02:00" // repeated: the first of the two
    })
    void a_time_is_carried_as_sent_with_the_offset_of_the_sender_s_zone(
            String sent, String expected) {
        assertThat(authoredOn(sent)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({
        "00000000",
        "19611304",
        "20260230",
        "202611032515",
        "2026-11-03",
        "yesterday",
        "20261",
        "20261103+9999"
    })
    void what_is_no_time_of_the_calendar_is_left_out_with_a_note(String sent) {
        assertThat(authoredOn(sent)).isNull();
        assertThat(map(sent).notes()).extracting(Note::field).contains("ORC-9");
    }

    private static String authoredOn(String sent) {
        return map(sent).orders().get(0).serviceRequest().getAuthoredOnElement().getValueAsString();
    }

    private static MappedMessage map(String sent) {
        var berlin =
                new MappingContext(
                        "harrow-bay",
                        "",
                        Map.of("HARROWBAY", "urn:oid:2.999.10.1"),
                        ZoneId.of("Europe/Berlin"),
                        Instant.parse("2026-11-03T09:15:00Z"));
        return MessageToFhir.map(Messages.parse(SampleMessage.with("ORC-9=" + sent)), berlin);
    }
}

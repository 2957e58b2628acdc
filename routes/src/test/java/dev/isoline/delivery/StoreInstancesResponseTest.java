package dev.isoline.delivery;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.delivery.Verdict.Outcome;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** PS3.18 10.5.3 (2024e): status codes and the Store Instances Response Module, I.1 and I.2. */
class StoreInstancesResponseTest {

    private static final String OURS = "2.999.1";

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource(
            quoteCharacter = '`',
            value = {
                "400, REFUSED",
                "401, REFUSED",
                "403, REFUSED",
                "404, REFUSED",
                "409, REFUSED",
                "413, REFUSED",
                "415, REFUSED",
                "302, REFUSED",
                "204, REFUSED",
                "408, RETRY",
                "425, RETRY",
                "429, RETRY",
                "500, RETRY",
                "502, RETRY",
                "503, RETRY",
                "504, RETRY"
            })
    void a_status_without_a_body_tells_whether_another_try_can_help(int status, Outcome outcome) {
        assertThat(judge(status, "")).isEqualTo(new Verdict(outcome, "HTTP " + status));
    }

    @ParameterizedTest(name = "reason {0}")
    @CsvSource({
        "A700, RETRY, out of resources",
        "A7FF, RETRY, out of resources",
        "0110, RETRY, processing failure",
        "0213, RETRY, resource limitation",
        "A900, REFUSED, data set does not match SOP class",
        "A9FF, REFUSED, data set does not match SOP class",
        "C000, REFUSED, 'cannot understand, unable to process'",
        "C122, REFUSED, 'cannot understand, unable to process'",
        "0122, REFUSED, SOP class not supported",
        "0124, REFUSED, not authorized",
        "EEEE, REFUSED, failure"
    })
    void a_failure_reason_decides_whether_it_is_tried_again(
            String reason, Outcome outcome, String words) {
        assertThat(judge(202, failed(OURS, reason)))
                .isEqualTo(new Verdict(outcome, "HTTP 202, " + reason + " " + words));
        assertThat(judge(409, failed(OURS, reason)).outcome()).isEqualTo(outcome);
        assertThat(judge(200, failed(OURS, reason)).outcome()).isEqualTo(outcome);
    }

    @Test
    void status_202_alone_is_no_success() {
        assertThat(judge(202, "").outcome()).isEqualTo(Outcome.RETRY);
        assertThat(judge(202, "{}").outcome()).isEqualTo(Outcome.RETRY);
        assertThat(judge(202, stored("2.999.2", "")).outcome()).isEqualTo(Outcome.RETRY);
    }

    @Test
    void a_stored_object_with_a_warning_is_delivered_and_the_warning_noted() {
        assertThat(judge(202, stored(OURS, "B000")))
                .isEqualTo(Verdict.delivered("HTTP 202, B000 coercion of data elements (warning)"));
        assertThat(judge(202, stored(OURS, "B007")).outcome()).isEqualTo(Outcome.DELIVERED);
        assertThat(judge(202, stored(OURS, "")))
                .isEqualTo(Verdict.delivered("HTTP 202, 0000 success"));
    }

    /** Orthanc 1.10 with DICOMweb 1.7 answers 200 to an object it did not store. */
    @Test
    void neither_is_status_200_when_it_does_not_list_the_object() {
        assertThat(judge(200, "").outcome()).isEqualTo(Outcome.RETRY);
        assertThat(judge(200, "{}").outcome()).isEqualTo(Outcome.RETRY);
        assertThat(judge(200, failed("2.999.2", "A900")).outcome()).isEqualTo(Outcome.RETRY);
    }

    @Test
    void an_object_listed_as_stored_is_delivered() {
        assertThat(judge(200, stored(OURS, "")))
                .isEqualTo(Verdict.delivered("HTTP 200, 0000 success"));
        assertThat(judge(200, "[" + stored(OURS, "") + "]"))
                .isEqualTo(Verdict.delivered("HTTP 200, 0000 success"));
    }

    @Test
    void a_failure_that_names_no_object_is_ours() {
        assertThat(
                        judge(
                                202,
                                "{\"0008119A\":{\"vr\":\"SQ\",\"Value\":[%s]}}"
                                        .formatted(reason("C000"))))
                .isEqualTo(Verdict.refused("HTTP 202, C000 cannot understand, unable to process"));
    }

    @Test
    void a_failed_object_whose_reason_says_success_is_not_delivered() {
        assertThat(judge(202, failed(OURS, "0000")).outcome()).isEqualTo(Outcome.REFUSED);
    }

    private static Verdict judge(int status, String body) {
        return StoreInstancesResponse.judge(status, body.getBytes(StandardCharsets.UTF_8), OURS);
    }

    static String stored(String uid, String warning) {
        return item("00081199", uid, warning.isEmpty() ? "" : ",\"00081196\":" + us(warning));
    }

    private static String failed(String uid, String reason) {
        return item("00081198", uid, ",\"00081197\":" + us(reason));
    }

    private static String item(String sequence, String uid, String more) {
        return """
               {"%s":{"vr":"SQ","Value":[{
                 "00081150":{"vr":"UI","Value":["1.2.840.10008.5.1.4.1.1.9.1.3"]},
                 "00081155":{"vr":"UI","Value":["%s"]}%s}]}}
               """
                .formatted(sequence, uid, more);
    }

    private static String reason(String code) {
        return "{\"00081197\":" + us(code) + "}";
    }

    private static String us(String code) {
        return "{\"vr\":\"US\",\"Value\":[%d]}".formatted(Integer.parseInt(code, 16));
    }
}

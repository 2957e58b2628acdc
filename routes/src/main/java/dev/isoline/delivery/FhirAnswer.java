package dev.isoline.delivery;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.Set;

/**
 * Judges the answer to a transaction: HTTP status first (RFC 9110 ch. 15), then the
 * transaction-response (FHIR R4, http.html#transaction-response).
 */
final class FhirAnswer {

    private static final ObjectMapper JSON = new ObjectMapper();

    /** Request Timeout, Conflict, Too Early (RFC 8470), Too Many Requests (RFC 6585). */
    private static final Set<Integer> PASSING = Set.of(408, 409, 425, 429);

    private FhirAnswer() {}

    static Verdict judge(int status, byte[] body) {
        if (status >= 500 || PASSING.contains(status)) {
            return Verdict.retry("HTTP " + status + issue(parsed(body)));
        }
        return status / 100 == 2
                ? judge(status, parsed(body))
                : Verdict.refused("HTTP " + status + issue(parsed(body)));
    }

    private static Verdict judge(int status, JsonNode response) {
        if (!response.path("type").asText().equals("transaction-response")) {
            return Verdict.refused("HTTP " + status + " without a transaction-response");
        }
        JsonNode entries = response.path("entry");
        for (int i = 0; i < entries.size(); i++) {
            JsonNode entry = entries.get(i).path("response");
            if (!entry.path("status").asText().matches("(2\\d\\d|304).*")) {
                return Verdict.refused(
                        "entry " + i + " was not stored" + issue(entry.path("outcome")));
            }
        }
        return Verdict.delivered("HTTP " + status + ", " + entries.size() + " entries");
    }

    /**
     * Code and place of the first issue of an OperationOutcome; its texts may quote the patient.
     */
    private static String issue(JsonNode outcome) {
        JsonNode issue = outcome.path("issue").path(0);
        String code = plain(issue.path("code").asText());
        String place = plain(issue.path("expression").path(0).asText());
        return (code.isEmpty() ? "" : ", " + code) + (place.isEmpty() ? "" : " at " + place);
    }

    /** Element paths and issue codes are made of these characters; quoted values are not. */
    private static String plain(String text) {
        return text.matches("[A-Za-z][A-Za-z0-9.\\[\\]-]{0,99}") ? text : "";
    }

    private static JsonNode parsed(byte[] body) {
        try {
            return JSON.readTree(body);
        } catch (IOException e) {
            return JSON.missingNode();
        }
    }
}

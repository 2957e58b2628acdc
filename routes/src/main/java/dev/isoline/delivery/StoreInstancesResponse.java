package dev.isoline.delivery;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/**
 * Judges the answer to a STOW-RS request for one instance: HTTP status first (PS3.18 10.5.3.1),
 * then the Store Instances Response Module (PS3.18 I.1) in the DICOM JSON Model (Annex F).
 */
final class StoreInstancesResponse {

    private static final ObjectMapper JSON = new ObjectMapper();

    private static final String REFERENCED_SOP_SEQUENCE = "00081199";
    private static final String FAILED_SOP_SEQUENCE = "00081198";
    private static final String OTHER_FAILURES_SEQUENCE = "0008119A";
    private static final String REFERENCED_SOP_INSTANCE_UID = "00081155";
    private static final String WARNING_REASON = "00081196";
    private static final String FAILURE_REASON = "00081197";

    /** Request Timeout, Too Early (RFC 8470), Too Many Requests (RFC 6585). */
    private static final Set<Integer> PASSING = Set.of(408, 425, 429);

    private final int status;
    private final JsonNode response;
    private final String sopInstance;

    private StoreInstancesResponse(int status, JsonNode response, String sopInstance) {
        this.status = status;
        this.response = response;
        this.sopInstance = sopInstance;
    }

    static Verdict judge(int status, byte[] body, String sopInstance) {
        return new StoreInstancesResponse(status, parsed(body), sopInstance).judge();
    }

    private Verdict judge() {
        if (status >= 500 || PASSING.contains(status)) {
            return Verdict.retry(http());
        }
        return switch (status) {
            // 202: some were not stored, or with warnings. Servers answer 200 to that as well.
            case 200, 202 ->
                    failure()
                            .or(this::stored)
                            .orElse(Verdict.retry(http() + " that does not list the object"));
            case 409 -> failure().orElse(Verdict.refused(http()));
            default -> Verdict.refused(http());
        };
    }

    /** The instance among those that were stored. */
    private Optional<Verdict> stored() {
        return ours(REFERENCED_SOP_SEQUENCE)
                .map(item -> first(item, WARNING_REASON).orElse(0))
                .map(this::judged);
    }

    /** The instance among those that were not. */
    private Optional<Verdict> failure() {
        return ours(FAILED_SOP_SEQUENCE)
                .or(() -> items(OTHER_FAILURES_SEQUENCE).findFirst())
                .map(item -> first(item, FAILURE_REASON))
                .map(reason -> reason.isPresent() ? failed(reason.getAsInt()) : unexplained());
    }

    /** A failed item whose reason says that all is well contradicts itself. */
    private Verdict failed(int reason) {
        Verdict verdict = judged(reason);
        return verdict.outcome() == Verdict.Outcome.DELIVERED
                ? Verdict.refused(verdict.text() + ", yet listed as failed")
                : verdict;
    }

    private Verdict unexplained() {
        return Verdict.refused(http() + ", failed without a reason");
    }

    private Verdict judged(int code) {
        Verdict verdict = StoreStatus.judge(code);
        return new Verdict(verdict.outcome(), http() + ", " + verdict.text());
    }

    private String http() {
        return "HTTP " + status;
    }

    private Optional<JsonNode> ours(String sequence) {
        return items(sequence)
                .filter(
                        item ->
                                item.path(REFERENCED_SOP_INSTANCE_UID)
                                        .path("Value")
                                        .path(0)
                                        .asText()
                                        .equals(sopInstance))
                .findFirst();
    }

    private Stream<JsonNode> items(String sequence) {
        return StreamSupport.stream(response.path(sequence).path("Value").spliterator(), false);
    }

    /** US: a number, or a string of one (Annex F.2.3). */
    private static OptionalInt first(JsonNode item, String tag) {
        JsonNode value = item.path(tag).path("Value").path(0);
        return value.isMissingNode() ? OptionalInt.empty() : OptionalInt.of(value.asInt(-1));
    }

    /** One data set, or a list of one (Annex F.2.1). */
    private static JsonNode parsed(byte[] body) {
        try {
            JsonNode json = JSON.readTree(body);
            return json.isArray() ? json.path(0) : json;
        } catch (IOException e) {
            return JSON.missingNode();
        }
    }
}

package dev.isoline.delivery;

import dev.isoline.delivery.Verdict.Outcome;
import java.util.Arrays;
import java.util.Locale;

/**
 * What a status of C-STORE, or a failure reason of STOW-RS or of storage commitment, means for a
 * delivery. docs/flows/04-result-out.md shows the table; the meanings are those of PS3.4 B.2.3,
 * PS3.7 annex C, PS3.18 I.2 and PS3.3 C.14.1.1, what is done about them is ours.
 */
// spotless:off
enum StoreStatus {
    STORED(0x0000, 0x0000, Outcome.DELIVERED, "stored"),
    COERCED(0xB000, 0xB000, Outcome.DELIVERED, "stored, warning: elements coerced"),
    DISCARDED(0xB006, 0xB006, Outcome.DELIVERED, "stored, warning: elements discarded"),
    NOT_AS_CLASS(0xB007, 0xB007, Outcome.DELIVERED, "stored, warning: does not match its SOP class"),
    WARNING(0xB000, 0xBFFF, Outcome.DELIVERED, "stored, warning"),
    ATTRIBUTE_LIST(0x0107, 0x0107, Outcome.DELIVERED, "stored, warning: attribute list error"),
    ATTRIBUTE_RANGE(0x0116, 0x0116, Outcome.DELIVERED, "stored, warning: attribute value out of range"),
    GENERAL_WARNING(0x0001, 0x0001, Outcome.DELIVERED, "stored, warning"),
    OUT_OF_RESOURCES(0xA700, 0xA7FF, Outcome.RETRY, "out of resources"),
    PROCESSING(0x0110, 0x0110, Outcome.RETRY, "processing failure"),
    RESOURCE_LIMITATION(0x0213, 0x0213, Outcome.RETRY, "resource limitation"),
    DUPLICATE_INVOCATION(0x0210, 0x0210, Outcome.RETRY, "duplicate invocation"),
    NO_SUCH_INSTANCE(0x0112, 0x0112, Outcome.RETRY, "no such object instance"),
    NOT_ITS_CLASS(0xA900, 0xA9FF, Outcome.REFUSED, "data set does not match its SOP class"),
    TRANSFER_SYNTAX(0xC122, 0xC122, Outcome.REFUSED, "transfer syntax not supported"),
    CANNOT_UNDERSTAND(0xC000, 0xCFFF, Outcome.REFUSED, "cannot understand"),
    INVALID_INSTANCE(0x0117, 0x0117, Outcome.REFUSED, "invalid SOP instance"),
    CONFLICT(0x0119, 0x0119, Outcome.REFUSED, "class and instance conflict"),
    CLASS_NOT_SUPPORTED(0x0122, 0x0122, Outcome.REFUSED, "SOP class not supported"),
    NOT_AUTHORIZED(0x0124, 0x0124, Outcome.REFUSED, "not authorized"),
    UNRECOGNIZED_OPERATION(0x0211, 0x0211, Outcome.REFUSED, "unrecognized operation"),
    MISTYPED_ARGUMENT(0x0212, 0x0212, Outcome.REFUSED, "mistyped argument"),
    OTHER(0x0000, 0xFFFF, Outcome.REFUSED, "a status outside the table");
    // spotless:on

    private final int first;
    private final int last;
    private final Outcome outcome;
    private final String words;

    StoreStatus(int first, int last, Outcome outcome, String words) {
        this.first = first;
        this.last = last;
        this.outcome = outcome;
        this.words = words;
    }

    /** The first row that holds the code decides. */
    static Verdict judge(int code) {
        StoreStatus row =
                Arrays.stream(values())
                        .filter(r -> r.first <= code && code <= r.last)
                        .findFirst()
                        .orElse(OTHER);
        return new Verdict(
                row.outcome, String.format(Locale.ROOT, "%04X %s", code & 0xFFFF, row.words));
    }
}

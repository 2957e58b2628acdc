package dev.isoline.delivery;

import dev.isoline.dicom.spi.Status;
import java.util.Locale;
import java.util.Set;

/**
 * What a status of C-STORE (PS3.4 B.2.3), or a failure reason of STOW-RS (PS3.18 I.2) or of storage
 * commitment (PS3.3 C.14.1.1), means for a delivery. docs/flows/04-result-out.md has the table.
 */
final class StoreStatus {

    /** Processing failure, no such object instance, duplicate invocation, resource limitation. */
    private static final Set<Integer> PASSING = Set.of(0x0110, 0x0112, 0x0210, 0x0213);

    private static final int OUT_OF_RESOURCES = 0xA7;

    private StoreStatus() {}

    /** The words are the standard's: a comment of the receiver may quote the patient. */
    static Verdict judge(int code) {
        Status status = Status.of(code & 0xFFFF);
        String words = String.format(Locale.ROOT, "%04X %s", status.code(), status.name());
        if (status.isPerformed()) {
            return Verdict.delivered(status.isSuccess() ? words : words + " (warning)");
        }
        return PASSING.contains(status.code()) || status.code() >> 8 == OUT_OF_RESOURCES
                ? Verdict.retry(words)
                : Verdict.refused(words);
    }
}

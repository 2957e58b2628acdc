package dev.isoline.dicom.spi;

import java.io.IOException;
import java.util.Map;

/** An association was rejected: A-ASSOCIATE-RJ with result, source and reason, PS3.8 table 9-21. */
public final class Rejection extends IOException {

    private static final long serialVersionUID = 1;

    private static final int TRANSIENT = 2;

    private static final Map<Integer, String> RESULTS =
            Map.of(1, "rejected permanently", TRANSIENT, "rejected for now");

    /** By source, then reason. */
    // spotless:off
    private static final Map<Integer, Map<Integer, String>> REASONS = Map.of(
            1, Map.of(
                    1, "no reason given",
                    2, "application context name not supported",
                    3, "calling AE title not recognised",
                    7, "called AE title not recognised"),
            2, Map.of(
                    1, "no reason given",
                    2, "protocol version not supported"),
            3, Map.of(
                    1, "temporary congestion",
                    2, "local limit exceeded"));
    // spotless:on

    private static final Map<Integer, String> SOURCES =
            Map.of(
                    1, "service user",
                    2, "service provider (ACSE)",
                    3, "service provider (presentation)");

    private final int result;
    private final int source;
    private final int reason;

    public Rejection(int result, int source, int reason) {
        super("association " + words(result, source, reason));
        this.result = result;
        this.source = source;
        this.reason = reason;
    }

    private static String words(int result, int source, int reason) {
        return RESULTS.getOrDefault(result, "rejected with result " + result)
                + " by the "
                + SOURCES.getOrDefault(source, "source " + source)
                + ": "
                + REASONS.getOrDefault(source, Map.of()).getOrDefault(reason, "reason " + reason);
    }

    /** 1 permanent, 2 transient. */
    public int result() {
        return result;
    }

    /** 1 service user, 2 service provider (ACSE), 3 service provider (presentation). */
    public int source() {
        return source;
    }

    /** Its meaning depends on the source. */
    public int reason() {
        return reason;
    }

    /** True where the peer says that trying again later may do. */
    public boolean isTransient() {
        return result == TRANSIENT;
    }
}

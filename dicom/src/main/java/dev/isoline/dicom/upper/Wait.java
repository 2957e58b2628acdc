package dev.isoline.dicom.upper;

import dev.isoline.dicom.spi.Timeouts;
import java.time.Duration;
import java.util.function.Function;

/** What an association may be waiting for, and how long. */
public enum Wait {
    /** Nothing is timed. */
    FREELY(t -> Duration.ZERO, ""),
    /** Association Request/Reject/Release Timer, PS3.8 9.1.5. */
    ARTIM(Timeouts::artim, "the peer neither asked for an association nor closed its connection"),
    CONNECTION(Timeouts::connect, "no connection"),
    ASSOCIATION(Timeouts::associate, "no answer to A-ASSOCIATE-RQ"),
    RESPONSE(Timeouts::response, "no sign of life of the peer"),
    REQUEST(Timeouts::idle, "no request"),
    RELEASE(Timeouts::release, "no answer to A-RELEASE-RQ");

    private final Function<Timeouts, Duration> limit;
    private final String failure;

    Wait(Function<Timeouts, Duration> limit, String failure) {
        this.limit = limit;
        this.failure = failure;
    }

    /** Zero for no limit. */
    Duration limit(Timeouts timeouts) {
        return limit.apply(timeouts);
    }

    /** What to say when it took too long. */
    String failure(Timeouts timeouts) {
        return failure + " within " + limit(timeouts).toMillis() + " ms";
    }

    /** Nobody can be told any more, or yet: the connection is closed at once. */
    boolean closesAtOnce() {
        return this == ARTIM || this == CONNECTION;
    }
}

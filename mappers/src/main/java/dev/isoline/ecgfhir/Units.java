package dev.isoline.ecgfhir;

import java.time.Duration;

/** Durations in the units reports are read in. */
final class Units {

    private Units() {}

    static double hours(Duration duration) {
        return duration.toMillis() / 3_600_000.0;
    }

    static double minutes(Duration duration) {
        return duration.toMillis() / 60_000.0;
    }

    static double seconds(Duration duration) {
        return duration.toNanos() / 1e9;
    }

    static double millis(Duration duration) {
        return duration.toNanos() / 1e6;
    }
}

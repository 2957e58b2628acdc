package dev.isoline.delivery;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** Stands still until it is moved. */
final class SettableClock extends Clock {

    private volatile Instant now = Instant.parse("2026-11-25T12:00:00Z");

    void move(Duration on) {
        now = now.plus(on);
    }

    @Override
    public Instant instant() {
        return now;
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        throw new UnsupportedOperationException();
    }
}

package dev.isoline.ecgdicom;

import java.time.Duration;

/**
 * Which short parts of a recording become objects of their own.
 *
 * @param most strips of one recording; 0 for none
 * @param length of a strip
 */
public record StripSettings(int most, Duration length) {

    /** Twelve strips of 10 s: common practice, no source. */
    public static final StripSettings DEFAULT = new StripSettings(12, Duration.ofSeconds(10));
}

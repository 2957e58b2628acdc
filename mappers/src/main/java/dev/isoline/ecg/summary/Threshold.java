package dev.isoline.ecg.summary;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The thresholds of the analysis: default, limits, unit, and where the default comes from. */
public enum Threshold {
    // spotless:off
    PAUSE             (   2, 1e-3, 3600, Unit.SECONDS,    "customary for reports, no source"),
    RATE_BEATS        (   8,    1, 1000, Unit.NONE,       "customary, no source"),
    BRADYCARDIA_RATE  (  50,   10,  200, Unit.PER_MINUTE, "AHA adult bradycardia algorithm: under 50"),
    TACHYCARDIA_RATE  ( 100,   30,  400, Unit.PER_MINUTE, "customary: over 100, from memory"),
    RATE_EPISODE      (  60,    1, 3600, Unit.SECONDS,    "own choice: a rate is counted over a minute"),
    RUN_BEATS         (   3,    3,  100, Unit.NONE,       "2017 AHA/ACC/HRS ventricular arrhythmia guideline"),
    VT_RATE           ( 100,   30,  400, Unit.PER_MINUTE, "2017 AHA/ACC/HRS: over 100 (cycle under 600 ms)"),
    VT_SUSTAINED      (  30,    1, 3600, Unit.SECONDS,    "2017 AHA/ACC/HRS: 30 s"),
    AIVR_RATE         (  50,   10,  200, Unit.PER_MINUTE, "customary: 50 to 100, from memory"),
    SVT_RATE          ( 100,   30,  400, Unit.PER_MINUTE, "customary: over 100, from memory"),
    BIGEMINY_CYCLES   (   3,    2,  100, Unit.NONE,       "customary, no source"),
    TRIGEMINY_CYCLES  (   3,    2,  100, Unit.NONE,       "customary, no source"),
    AF_DURATION       (  30,    1, 3600, Unit.SECONDS,    "ISHNE-HRS expert consensus 2017: 30 s, by a public note of it"),
    AF_IRREGULARITY   (0.725,   0,   10, Unit.NONE,       "Petrenas et al., Comput Biol Med 2015;65:184, from memory"),
    NN_SHORTEST       ( 300,  100, 2000, Unit.MILLISECONDS, "unclassified beats; common practice, no source"),
    NN_LONGEST        (2000,  300, 5000, Unit.MILLISECONDS, "unclassified beats; common practice, no source"),
    NN_OFF            (  20,    1,  100, Unit.PERCENT,    "unclassified beats; common practice, no source"),
    HRV_SHORTEST      ( 300,    0, 86400, Unit.SECONDS,   "Task Force 1996: 5 min is the standard short recording"),
    HRV_GEOMETRIC     (1200,    0, 86400, Unit.SECONDS,   "Task Force 1996: 20 min for geometric measures, from memory"),
    HRV_SEGMENT       ( 300,   10, 3600, Unit.SECONDS,    "Task Force 1996, table 1: usually 5 min"),
    HRV_SEGMENT_SHARE (  50,    0,  100, Unit.PERCENT,    "own choice: share of a segment its NN intervals cover"),
    HRV_DAY           (64800,   0, 86400, Unit.SECONDS,   "Task Force 1996: 18 h of a day, from memory");
    // spotless:on

    /** What a threshold is counted in. */
    public enum Unit {
        SECONDS,
        MILLISECONDS,
        PER_MINUTE,
        PERCENT,
        NONE
    }

    private final double standard;
    private final double least;
    private final double most;
    private final Unit unit;
    private final String source;

    Threshold(double standard, double least, double most, Unit unit, String source) {
        this.standard = standard;
        this.least = least;
        this.most = most;
        this.unit = unit;
        this.source = source;
    }

    /** As options and configuration files write it: {@code vt-rate}. */
    public String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static Optional<Threshold> ofKey(String key) {
        return Arrays.stream(values()).filter(t -> t.key().equals(key)).findFirst();
    }

    /** The value that holds where nobody sets another. */
    public double standard() {
        return standard;
    }

    public double least() {
        return least;
    }

    public double most() {
        return most;
    }

    public Unit unit() {
        return unit;
    }

    /** Where the default comes from. */
    public String source() {
        return source;
    }
}

package dev.isoline.ecgfhir;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** What is told of the ectopic beats of one class. */
record EctopyMetric(Origin origin, Aspect aspect) implements Metric {

    /** Where the beats come from. */
    enum Origin {
        VENTRICULAR,
        SUPRAVENTRICULAR
    }

    // spotless:off
    enum Aspect {
        PANEL           ("ectopy-panel",             "ectopy",                                       ""),
        COUNT           ("ectopic-count",            "ectopic beats",                                "{beats}"),
        PER_HOUR        ("ectopic-hourly",           "ectopic beats per analysable hour",            "/h"),
        SHARE           ("ectopic-share",            "ectopic beats as share of all beats",          "%"),
        MOST            ("ectopic-most-in-hour",     "ectopic beats in the hour with the most",      "{beats}"),
        MOST_TIME       ("ectopic-most-in-hour-time", "ectopic beats, start of the hour with the most", ""),
        COUPLETS        ("couplet-count",            "couplets",                                     "{count}"),
        TRIPLETS        ("triplet-count",            "triplets",                                     "{count}"),
        RUNS            ("run-count",                "runs",                                         "{count}"),
        RUN_BEATS       ("run-beats",                "ectopic beats in runs",                        "{beats}"),
        LONGEST_BEATS   ("longest-run-beats",        "longest run, beats",                           "{beats}"),
        LONGEST_DURATION("longest-run-duration",     "longest run, duration",                        "s"),
        LONGEST_RATE    ("longest-run-rate",         "longest run, mean rate",                       "/min"),
        LONGEST_TIME    ("longest-run-time",         "longest run, time",                            ""),
        FASTEST_RATE    ("fastest-run-rate",         "fastest run, mean rate",                       "/min"),
        FASTEST_BEATS   ("fastest-run-beats",        "fastest run, beats",                           "{beats}"),
        FASTEST_DURATION("fastest-run-duration",     "fastest run, duration",                        "s"),
        FASTEST_TIME    ("fastest-run-time",         "fastest run, time",                            ""),
        BIGEMINY        ("bigeminy-count",           "bigeminy, episodes",                           "{count}"),
        BIGEMINY_BEATS  ("bigeminy-ectopic-count",   "ectopic beats in bigeminy",                    "{beats}"),
        TRIGEMINY       ("trigeminy-count",          "trigeminy, episodes",                          "{count}"),
        TRIGEMINY_BEATS ("trigeminy-ectopic-count",  "ectopic beats in trigeminy",                   "{beats}");
        // spotless:on

        private final String suffix;
        private final String words;
        private final String unit;

        Aspect(String suffix, String words, String unit) {
            this.suffix = suffix;
            this.words = words;
            this.unit = unit;
        }
    }

    static Stream<EctopyMetric> all() {
        return Arrays.stream(Origin.values())
                .flatMap(o -> Arrays.stream(Aspect.values()).map(a -> new EctopyMetric(o, a)));
    }

    @Override
    public String code() {
        return origin.name().toLowerCase(Locale.ROOT) + "-" + aspect.suffix;
    }

    @Override
    public String display() {
        String name = origin.name();
        return name.charAt(0) + name.substring(1).toLowerCase(Locale.ROOT) + " " + aspect.words;
    }

    @Override
    public String unit() {
        return aspect.unit;
    }

    /** 76126-2: a count of premature ventricular contractions. */
    @Override
    public List<String> loinc() {
        boolean counted = origin == Origin.VENTRICULAR && aspect == Aspect.COUNT;
        return counted ? List.of("76126-2") : List.of();
    }
}

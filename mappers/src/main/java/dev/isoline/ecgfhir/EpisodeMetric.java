package dev.isoline.ecgfhir;

import dev.isoline.ecg.summary.EpisodeKind;
import java.util.Arrays;
import java.util.stream.Stream;

/** What is told of all episodes of one kind together. */
record EpisodeMetric(EpisodeKind kind, Aspect aspect) implements Metric {

    // spotless:off
    enum Aspect {
        PANEL   ("panel",    "",                                        ""),
        EPISODES("episodes", ", episodes",                              "{count}"),
        BEATS   ("beats",    ", beats in episodes",                     "{beats}"),
        TIME    ("time",     ", time in episodes",                      "s"),
        BURDEN  ("burden",   ", time as share of the analysable time",  "%");
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

    static Stream<EpisodeMetric> all() {
        return Arrays.stream(EpisodeKind.values())
                .flatMap(k -> Arrays.stream(Aspect.values()).map(a -> new EpisodeMetric(k, a)));
    }

    @Override
    public String code() {
        return EpisodeConcept.code(kind) + "-" + aspect.suffix;
    }

    @Override
    public String display() {
        return EpisodeConcept.display(kind) + aspect.words;
    }

    @Override
    public String unit() {
        return aspect.unit;
    }
}

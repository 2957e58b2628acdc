package dev.isoline.conformance.demo;

import dev.isoline.synth.Truth;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * The values a report states, the codes it states them under (LOINC, else the gateway's own code
 * system), and how far from the truth they may be: docs/demo.md says why.
 */
enum Metric {
    // spotless:off
    MEAN_RATE       ("mean heart rate",         "/min", List.of("41924-2", "heart-rate-mean"),           Truth::meanRate,          new Tolerance(1,  0),    false),
    MAX_RATE        ("highest heart rate",      "/min", List.of("8873-2", "heart-rate-max"),             Truth::maxRate,           new Tolerance(1,  0),    false),
    MIN_RATE        ("lowest heart rate",       "/min", List.of("8883-1", "heart-rate-min"),             Truth::minRate,           new Tolerance(1,  0),    false),
    LONGEST_RR      ("longest R-R interval",    "ms",   List.of("76638-6", "rr-interval-max"),           Truth::longestRr,         new Tolerance(20, 0),    false),
    PAUSES          ("number of pauses",        "",     List.of("pause-count"),                          t -> t.pauses().size(),   new Tolerance(0,  0),    false),
    SDNN            ("SDNN",                    "ms",   List.of("76643-6", "sdnn"),                      Truth::sdnn,              new Tolerance(0,  0.02), false),
    RMSSD           ("RMSSD",                   "ms",   List.of("rmssd"),                                Truth::rmssd,             new Tolerance(2,  0.02), false),
    PNN50           ("pNN50",                   "%",    List.of("pnn50"),                                Truth::pnn50,             new Tolerance(2,  0),    false),
    BEATS           ("beats",                   "",     List.of("beat-count"),                           Truth::beats,             new Tolerance(2,  0),    false),
    VENTRICULAR     ("ventricular beats",       "",     List.of("76126-2", "ventricular-ectopic-count"), Truth::ventricular,       new Tolerance(0,  0),    true),
    SUPRAVENTRICULAR("supraventricular beats",  "",     List.of("supraventricular-ectopic-count"),       Truth::supraventricular,  new Tolerance(0,  0),    true);
    // spotless:on

    /**
     * @param absolute in the metric's unit
     * @param share of the true value
     */
    record Tolerance(double absolute, double share) {

        double around(double truth) {
            return Math.max(absolute, share * Math.abs(truth)) + ROUNDING;
        }
    }

    /** Values are compared as reports print them; half a unit of the one decimal. */
    private static final double ROUNDING = 0.05;

    /** Beats a program may put in another class than they were placed in, or miss. */
    private static final double MISJUDGED = 2;

    private final String title;
    private final String unit;
    private final List<String> codes;
    private final ToDoubleFunction<Truth> truth;
    private final Tolerance tolerance;
    private final boolean classes;

    Metric(
            String title,
            String unit,
            List<String> codes,
            ToDoubleFunction<Truth> truth,
            Tolerance tolerance,
            boolean classes) {
        this.title = title;
        this.unit = unit;
        this.codes = codes;
        this.truth = truth;
        this.tolerance = tolerance;
        this.classes = classes;
    }

    String title() {
        return title;
    }

    String unit() {
        return unit;
    }

    List<String> codes() {
        return codes;
    }

    double truth(Truth of) {
        return truth.applyAsDouble(of);
    }

    /**
     * @param classified whether the recording brings beat classes; where it does not, the program
     *     has to find them
     */
    double tolerance(Truth of, boolean classified) {
        return tolerance.around(truth(of)) + (classes && !classified ? MISJUDGED : 0);
    }
}

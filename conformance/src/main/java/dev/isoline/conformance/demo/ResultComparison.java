package dev.isoline.conformance.demo;

import java.util.Optional;

/** Every reported value beside the true one. */
final class ResultComparison {

    private final Story story;

    ResultComparison(Story story) {
        this.story = story;
    }

    /**
     * @param report name of the file the values come from
     */
    void compare(DemoRecording recording, String report, ReportedValues values) {
        for (Metric metric : Metric.values()) {
            double truth = metric.truth(recording.truth());
            double tolerance = metric.tolerance(recording.truth(), recording.classified());
            Optional<Double> value = values.of(metric);
            if (value.isEmpty()) {
                story.fail("%s states no %s", report, metric.title());
            } else if (!(Math.abs(value.get() - truth) <= tolerance)) {
                story.fail(
                        "%s: %s is %.2f %s, the truth is %.2f (allowed %.2f)",
                        report, metric.title(), value.get(), metric.unit(), truth, tolerance);
            }
        }
    }

    void tell(DemoRecording recording, ReportedValues values) {
        for (Metric metric : Metric.values()) {
            values.of(metric)
                    .ifPresent(
                            value ->
                                    story.add(
                                            "%-24s %9.2f %-5s true %9.2f",
                                            metric.title(),
                                            value,
                                            metric.unit(),
                                            metric.truth(recording.truth())));
        }
    }
}

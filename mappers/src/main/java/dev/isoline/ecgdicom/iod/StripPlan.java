package dev.isoline.ecgdicom.iod;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Stretch;
import dev.isoline.ecg.analysis.Findings;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.HeartRates.Interval;
import dev.isoline.ecg.summary.Threshold;
import dev.isoline.ecgdicom.StripSettings;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Which parts of a recording are worth an object of their own: around the longest RR interval, the
 * lowest and the highest heart rate, the longest run of ventricular and of supraventricular beats,
 * then further pauses and runs, the longest first, as many as the settings allow. What a strip
 * already shows gets no second one.
 */
final class StripPlan {

    private record Event(String reason, Stretch stretch) {}

    private final Findings findings;
    private final StripSettings settings;
    private final long length;
    private final List<Strip> strips = new ArrayList<>();

    private StripPlan(Findings findings, StripSettings settings) {
        this.findings = findings;
        this.settings = settings;
        this.length = samples(settings.length());
    }

    /** In time order. */
    static List<Strip> of(Findings findings, StripSettings settings) {
        var plan = new StripPlan(findings, settings);
        plan.events().forEach(plan::add);
        plan.strips.sort(Comparator.comparingLong(strip -> strip.window().from()));
        return List.copyOf(plan.strips);
    }

    /** The most telling first. */
    private List<Event> events() {
        var summary = findings.summary();
        var ventricular = events("ventricular run", Runs.of(Beat.Kind.V, findings.beats()));
        var supraventricular =
                events("supraventricular run", Runs.of(Beat.Kind.S, findings.beats()));
        var events = new ArrayList<Event>();
        summary.rates()
                .longestRr()
                .map(this::between)
                .ifPresent(at -> add("longest RR interval", at, events));
        summary.rates()
                .whole()
                .ifPresent(
                        rate -> {
                            add("lowest heart rate", around(rate.minAt()), events);
                            add("highest heart rate", around(rate.maxAt()), events);
                        });
        ventricular.stream().limit(1).forEach(events::add);
        supraventricular.stream().limit(1).forEach(events::add);
        summary.rhythm().of(EpisodeKind.PAUSE).stream()
                .sorted(Comparator.comparing(Episode::duration).reversed())
                .map(pause -> new Interval(pause.start(), pause.duration()))
                .forEach(pause -> add("pause", between(pause), events));
        ventricular.stream().skip(1).forEach(events::add);
        supraventricular.stream().skip(1).forEach(events::add);
        return events;
    }

    private static void add(String reason, Stretch stretch, List<Event> events) {
        events.add(new Event(reason, stretch));
    }

    private static List<Event> events(String reason, List<Stretch> stretches) {
        return stretches.stream().map(stretch -> new Event(reason, stretch)).toList();
    }

    private Stretch between(Interval interval) {
        long from = samples(interval.at());
        return new Stretch(from, from + samples(interval.length()) + 1);
    }

    /** A rate is averaged over the intervals that follow. */
    private Stretch around(Duration at) {
        long from = samples(at);
        int first = (int) findings.beats().stream().takeWhile(b -> b.sample() < from).count();
        int last = first + findings.summary().settings().count(Threshold.RATE_BEATS);
        boolean whole = last < findings.beats().size();
        return new Stretch(from, whole ? findings.beats().get(last).sample() + 1 : from + 1);
    }

    private long samples(Duration duration) {
        return Math.round(duration.toNanos() * findings.summary().coverage().hz() / 1e9);
    }

    private void add(Event event) {
        for (int i = 0; i < strips.size(); i++) {
            if (strips.get(i).shows(event.stretch())) {
                strips.set(i, with(strips.get(i), event.reason()));
                return;
            }
        }
        if (strips.size() < settings.most()) {
            window(event.stretch())
                    .ifPresent(window -> strips.add(new Strip(window, List.of(event.reason()))));
        }
    }

    private static Strip with(Strip strip, String reason) {
        if (strip.reasons().contains(reason)) {
            return strip;
        }
        var reasons = new ArrayList<>(strip.reasons());
        reasons.add(reason);
        return new Strip(strip.window(), List.copyOf(reasons));
    }

    /** The event in the middle, as far as its block reaches; the beginning of a longer event. */
    private Optional<Stretch> window(Stretch event) {
        long middle = (event.from() + Math.min(event.to(), event.from() + length)) / 2;
        return findings.recorded().stream()
                .filter(block -> block.from() <= event.from() && event.from() < block.to())
                .findFirst()
                .map(
                        block -> {
                            long latest = Math.max(block.from(), block.to() - length);
                            long from =
                                    Math.min(latest, Math.max(block.from(), middle - length / 2));
                            return new Stretch(from, Math.min(block.to(), from + length));
                        });
    }
}

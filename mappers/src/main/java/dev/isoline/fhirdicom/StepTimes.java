package dev.isoline.fhirdicom;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Duration;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.ServiceRequest;

/**
 * When a step starts and ends, in the zone of the order's sender.
 *
 * <p>It starts at the occurrence's event, else at the start of its period, else at
 * occurrenceDateTime; an order that says none of it starts when it was written (authoredOn), else
 * when it was received. A date alone means the first moment of that day.
 *
 * @param start to the second
 * @param end empty where the order does not say when it starts, or not how long it takes
 * @param duration such as {@code 14 d} (UCUM); empty where the order does not say
 */
record StepTimes(ZonedDateTime start, Optional<ZonedDateTime> end, String duration) {

    private static final Map<String, Long> SECONDS =
            Map.of("s", 1L, "min", 60L, "h", 3600L, "d", 86_400L, "wk", 604_800L);

    static StepTimes of(ServiceRequest order, ZoneId zone, Instant received) {
        Optional<ZonedDateTime> asked = asked(order).map(t -> zoned(t, zone));
        Optional<Period> period = period(order).filter(Period::hasEnd);
        Optional<ZonedDateTime> end = period.map(p -> zoned(p.getEndElement(), zone));
        Optional<Duration> duration = duration(order);
        return new StepTimes(
                asked.or(() -> authored(order, zone)).orElseGet(() -> second(received, zone)),
                end.or(() -> asked.flatMap(s -> duration.flatMap(d -> after(s, d)))),
                duration.map(StepTimes::words)
                        .or(() -> asked.flatMap(s -> end.map(e -> between(s, e))))
                        .orElse(""));
    }

    static Optional<ZonedDateTime> authored(ServiceRequest order, ZoneId zone) {
        return order.hasAuthoredOn()
                ? Optional.of(zoned(order.getAuthoredOnElement(), zone))
                : Optional.empty();
    }

    /** VR DA, PS3.5 6.2. */
    static String date(ZonedDateTime time) {
        return format("yyyyMMdd", time);
    }

    /** VR TM, to the second. */
    static String time(ZonedDateTime time) {
        return format("HHmmss", time);
    }

    /** Timezone Offset From UTC (0008,0201), PS3.3 C.12.1.1.8. */
    String offset() {
        return format("xx", start);
    }

    private static Optional<DateTimeType> asked(ServiceRequest order) {
        return Stream.of(
                        order.hasOccurrenceTiming()
                                ? order.getOccurrenceTiming().getEvent().stream()
                                : Stream.<DateTimeType>empty(),
                        period(order).map(Period::getStartElement).stream(),
                        order.hasOccurrenceDateTimeType()
                                ? Stream.of(order.getOccurrenceDateTimeType())
                                : Stream.<DateTimeType>empty())
                .flatMap(times -> times)
                .filter(DateTimeType::hasValue)
                .findFirst();
    }

    private static Optional<Period> period(ServiceRequest order) {
        if (order.hasOccurrencePeriod()) {
            return Optional.of(order.getOccurrencePeriod());
        }
        return order.hasOccurrenceTiming()
                        && order.getOccurrenceTiming().getRepeat().hasBoundsPeriod()
                ? Optional.of(order.getOccurrenceTiming().getRepeat().getBoundsPeriod())
                : Optional.empty();
    }

    private static Optional<Duration> duration(ServiceRequest order) {
        return order.hasOccurrenceTiming()
                        && order.getOccurrenceTiming().getRepeat().hasBoundsDuration()
                ? Optional.of(order.getOccurrenceTiming().getRepeat().getBoundsDuration())
                        .filter(d -> d.hasValue() && (d.hasCode() || d.hasUnit()))
                : Optional.empty();
    }

    private static String words(Duration duration) {
        return duration.getValue().stripTrailingZeros().toPlainString() + " " + unit(duration);
    }

    private static String unit(Duration duration) {
        return duration.hasCode() ? duration.getCode() : duration.getUnit();
    }

    private static String between(ZonedDateTime start, ZonedDateTime end) {
        long hours = ChronoUnit.HOURS.between(start, end);
        return hours % 24 == 0 ? hours / 24 + " d" : hours + " h";
    }

    private static Optional<ZonedDateTime> after(ZonedDateTime start, Duration duration) {
        if (unit(duration).equals("mo")) {
            return Optional.of(start.plusMonths(duration.getValue().longValue()));
        }
        return Optional.ofNullable(SECONDS.get(unit(duration)))
                .map(seconds -> duration.getValue().multiply(BigDecimal.valueOf(seconds)))
                .map(seconds -> start.plusSeconds(seconds.longValue()));
    }

    private static ZonedDateTime zoned(DateTimeType time, ZoneId zone) {
        String text = time.getValueAsString();
        return switch (text.length()) {
            case 4 -> LocalDate.parse(text + "-01-01").atStartOfDay(zone);
            case 7 -> LocalDate.parse(text + "-01").atStartOfDay(zone);
            case 10 -> LocalDate.parse(text).atStartOfDay(zone);
            default -> second(time.getValue().toInstant(), zone);
        };
    }

    private static ZonedDateTime second(Instant at, ZoneId zone) {
        return at.truncatedTo(ChronoUnit.SECONDS).atZone(zone);
    }

    private static String format(String pattern, ZonedDateTime time) {
        return DateTimeFormatter.ofPattern(pattern, Locale.ROOT).format(time);
    }
}

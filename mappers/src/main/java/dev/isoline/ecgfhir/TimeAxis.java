package dev.isoline.ecgfhir;

import ca.uhn.fhir.model.api.TemporalPrecisionEnum;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Date;
import java.util.Optional;
import java.util.TimeZone;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Period;

/**
 * Offsets from the start of a recording as instants. The recorder's clock runs on through a change
 * to or from summer time; only the offset written with the instant changes.
 */
final class TimeAxis {

    private final Optional<ZonedDateTime> start;
    private final ZoneId zone;

    TimeAxis(Optional<LocalDateTime> start, ZoneId zone) {
        this.start = start.map(local -> local.atZone(zone));
        this.zone = zone;
    }

    /** Empty when the recording does not say when it began. */
    Optional<DateTimeType> at(Duration offset) {
        return start.map(s -> dateTime(s.plus(offset)));
    }

    Optional<Period> period(Duration from, Duration to) {
        return start.map(
                s ->
                        new Period()
                                .setStartElement(dateTime(s.plus(from)))
                                .setEndElement(dateTime(s.plus(to))));
    }

    private DateTimeType dateTime(ZonedDateTime instant) {
        return new DateTimeType(
                Date.from(instant.toInstant()),
                TemporalPrecisionEnum.MILLI,
                TimeZone.getTimeZone(zone));
    }
}

package dev.isoline.fhir;

import ca.uhn.fhir.model.api.TemporalPrecisionEnum;
import java.time.Instant;
import java.util.Date;
import java.util.TimeZone;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.InstantType;

/** Instants written in UTC; the model's own setters would write them in the machine's zone. */
public final class UtcTime {

    private static final TimeZone UTC = TimeZone.getTimeZone("UTC");

    private UtcTime() {}

    public static DateTimeType dateTime(Instant at) {
        return new DateTimeType(Date.from(at), TemporalPrecisionEnum.SECOND, UTC);
    }

    public static InstantType instant(Instant at) {
        return new InstantType(Date.from(at), TemporalPrecisionEnum.MILLI, UTC);
    }
}

package dev.isoline.hl7v2fhir.datatype;

import java.math.BigDecimal;
import java.util.Locale;
import org.hl7.fhir.r4.model.Duration;

/** Units of time as senders write them, to UCUM. */
final class UcumTime {

    private UcumTime() {}

    /** Null for a unit that is not clearly one of time, or a number that is not positive. */
    static Duration duration(String number, String unit) {
        String code = unit == null ? null : code(unit);
        if (code == null || number == null || !number.matches("\\d{1,9}(\\.\\d{1,9})?")) {
            return null;
        }
        var duration = new Duration();
        duration.setValue(new BigDecimal(number))
                .setUnit(code)
                .setCode(code)
                .setSystem("http://unitsofmeasure.org");
        return duration.getValue().signum() > 0 ? duration : null;
    }

    private static String code(String unit) {
        return switch (unit.toLowerCase(Locale.ROOT)) {
            case "s", "sec", "second", "seconds" -> "s";
            case "min", "minute", "minutes" -> "min";
            case "h", "hr", "hrs", "hour", "hours" -> "h";
            case "d", "day", "days" -> "d";
            case "w", "wk", "week", "weeks" -> "wk";
            case "mo", "month", "months" -> "mo";
            default -> null;
        };
    }
}

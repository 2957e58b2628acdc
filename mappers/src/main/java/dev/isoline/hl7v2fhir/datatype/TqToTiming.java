package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.v251.datatype.TQ;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.hl7.fhir.r4.model.Duration;
import org.hl7.fhir.r4.model.Timing;

/**
 * TQ (HL7 v2.5.1 ch. 2.A.81) to Timing. Rows: TQ[ServiceRequest];
 * docs/mappings/tq-to-servicerequest.md.
 */
public final class TqToTiming {

    /** ORC-7.3: a letter and a number, {@code D14}; {@code M} is minutes, {@code L} months. */
    private static final Pattern DURATION = Pattern.compile("([SMHDWL])(\\d+)");

    private TqToTiming() {}

    /** Empty when TQ.3, TQ.4 and TQ.5 are. */
    public static Optional<Timing> map(TQ tq, Reading in) {
        Duration duration = duration(StToString.map(tq.getTq3_Duration()), in);
        return timing(
                duration,
                TsToDateTime.map(tq.getTq4_StartDateTime(), in).orElse(null),
                TsToDateTime.map(tq.getTq5_EndDateTime(), in).orElse(null));
    }

    private static Duration duration(String text, Reading in) {
        if (text == null) {
            return null;
        }
        Matcher matcher = DURATION.matcher(text);
        Duration duration =
                matcher.matches()
                        ? UcumTime.duration(matcher.group(2), unit(matcher.group(1)))
                        : null;
        if (duration == null) {
            in.note(3, "left out: not a duration such as D14");
        }
        return duration;
    }

    private static String unit(String letter) {
        return switch (letter) {
            case "M" -> "min";
            case "L" -> "mo";
            default -> letter;
        };
    }

    /**
     * A duration bounds the timing and the start becomes its event, since one Timing cannot hold
     * both as bounds; without a duration start and end are the bounds.
     */
    public static Optional<Timing> timing(
            Duration duration,
            org.hl7.fhir.r4.model.DateTimeType start,
            org.hl7.fhir.r4.model.DateTimeType end) {
        var timing = new Timing();
        if (duration != null) {
            timing.getRepeat().setBounds(duration);
            if (start != null) {
                timing.getEvent().add(start);
            }
        } else if (start != null || end != null) {
            timing.getRepeat()
                    .setBounds(
                            new org.hl7.fhir.r4.model.Period()
                                    .setStartElement(start)
                                    .setEndElement(end));
        }
        return timing.isEmpty() ? Optional.empty() : Optional.of(timing);
    }
}

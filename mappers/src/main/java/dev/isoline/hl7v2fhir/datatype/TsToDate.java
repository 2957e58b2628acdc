package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.Type;
import java.util.Optional;
import org.hl7.fhir.r4.model.DateType;

/** TS and DT (HL7 v2.5.1 ch. 2.A.77, 2.A.21) to date: precision kept, no zone ever applied. */
public final class TsToDate {

    private TsToDate() {}

    /** Empty for an empty field; also, with a note, for one that names no date. */
    public static Optional<DateType> map(Type ts, Reading in) {
        String text = StToString.first(ts);
        if (text == null) {
            return Optional.empty();
        }
        Optional<DateType> date = parse(text);
        if (date.isEmpty()) {
            in.note("left out: not a date of the calendar");
        }
        return date;
    }

    private static Optional<DateType> parse(String text) {
        String day = text.length() > 8 && Dtm.parse(text).isEmpty() ? text.substring(0, 8) : text;
        return Dtm.parse(day).map(dtm -> new DateType(dtm.isoDate()));
    }
}

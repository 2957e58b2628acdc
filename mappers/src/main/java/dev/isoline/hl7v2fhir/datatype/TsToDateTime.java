package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.Type;
import java.util.Optional;
import org.hl7.fhir.r4.model.DateTimeType;

/**
 * TS and DT (HL7 v2.5.1 ch. 2.A.77, 2.A.21) to dateTime, rows of TS[dateTime] and DTM[dateTime].
 * Precision is kept; FHIR wants minutes and seconds where there is an hour, so they are filled with
 * zero.
 */
public final class TsToDateTime {

    private TsToDateTime() {}

    /** Empty for an empty field; also, with a note, for one that names no time. */
    public static Optional<DateTimeType> map(Type ts, Reading in) {
        String text = StToString.first(ts);
        if (text == null) {
            return Optional.empty();
        }
        Optional<Dtm> dtm = Dtm.parse(text);
        if (dtm.isEmpty()) {
            in.note("left out: not a time of the calendar");
        }
        return dtm.map(d -> new DateTimeType(d.isoDateTime(in.zone())));
    }
}

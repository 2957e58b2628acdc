package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.Type;
import ca.uhn.hl7v2.model.v251.datatype.DR;
import org.hl7.fhir.r4.model.Period;

/** DR (HL7 v2.5.1 ch. 2.A.20) to Period. Rows: DR[Period]. */
public final class DrToPeriod {

    private DrToPeriod() {}

    public static Period map(DR dr, Reading in) {
        return map(dr.getDr1_RangeStartDateTime(), dr.getDr2_RangeEndDateTime(), in);
    }

    /** Null when neither end is given. */
    public static Period map(Type start, Type end, Reading in) {
        var period = new Period();
        TsToDateTime.map(start, in).ifPresent(period::setStartElement);
        TsToDateTime.map(end, in).ifPresent(period::setEndElement);
        return period.isEmpty() ? null : period;
    }
}

package dev.isoline.fhirhl7v2;

import ca.uhn.hl7v2.model.DataTypeException;
import ca.uhn.hl7v2.model.v251.datatype.TS;
import java.util.regex.Pattern;
import org.hl7.fhir.r4.model.BaseDateTimeType;

/**
 * date, dateTime and instant to TS (HL7 v2.5.1 ch. 2.A.77) with the same digits and the same
 * offset: nothing is converted, so nothing shifts to another day.
 */
final class DateTimeToTs {

    /** The year, then what follows it; seconds carry up to four decimals in v2. */
    private static final Pattern FORM =
            Pattern.compile(
                    "(\\d{4})(?:-(\\d\\d))?(?:-(\\d\\d))?"
                            + "(?:T(\\d\\d):(\\d\\d):(\\d\\d)(\\.\\d{1,4})?\\d*(Z|[+-]\\d\\d:\\d\\d)?)?");

    private DateTimeToTs() {}

    static void map(BaseDateTimeType from, TS ts) throws DataTypeException {
        if (from != null && from.hasValue()) {
            ts.getTs1_Time().setValue(text(from.getValueAsString()));
        }
    }

    static String text(String dateTime) {
        var matcher = FORM.matcher(dateTime);
        if (!matcher.matches()) {
            return "";
        }
        var text = new StringBuilder();
        for (int group = 1; group <= matcher.groupCount(); group++) {
            text.append(matcher.group(group) == null ? "" : matcher.group(group));
        }
        return text.toString().replace("Z", "+0000").replace(":", "");
    }
}

package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.v251.datatype.CQ;
import java.util.Optional;
import org.hl7.fhir.r4.model.Duration;

/**
 * CQ (HL7 v2.5.1 ch. 2.A.11) to Duration: CQ[Quantity] where the guide asks for a length of time.
 */
public final class CqToDuration {

    private CqToDuration() {}

    /** Empty for an empty field; also, with a note, when it is no length of time. */
    public static Optional<Duration> map(CQ cq, Reading in) {
        String number = StToString.map(cq.getCq1_Quantity());
        if (number == null) {
            return Optional.empty();
        }
        String code = StToString.map(cq.getCq2_Units().getCe1_Identifier());
        String unit = code == null ? StToString.map(cq.getCq2_Units().getCe2_Text()) : code;
        Duration duration = UcumTime.duration(number, unit);
        if (duration == null) {
            in.note("left out: not a number with a unit of time");
        }
        return Optional.ofNullable(duration);
    }
}

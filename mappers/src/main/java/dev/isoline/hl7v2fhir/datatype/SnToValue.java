package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.v251.datatype.SN;
import java.math.BigDecimal;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Quantity.QuantityComparator;
import org.hl7.fhir.r4.model.Range;
import org.hl7.fhir.r4.model.Ratio;
import org.hl7.fhir.r4.model.StringType;
import org.hl7.fhir.r4.model.Type;

/**
 * SN (HL7 v2.5.1 ch. 2.A.71) to Quantity, Range, Ratio or string. Rows: SN[Quantity], SN[Range],
 * SN[Ratio].
 */
public final class SnToValue {

    private SnToValue() {}

    /**
     * @param unit value without a number that carries unit, code and system
     * @return null when SN is empty
     */
    public static Type map(SN sn, Quantity unit) {
        String comparator = StToString.map(sn.getSn1_Comparator());
        BigDecimal first = number(StToString.map(sn.getSn2_Num1()));
        BigDecimal second = number(StToString.map(sn.getSn4_Num2()));
        String separator = StToString.map(sn.getSn3_SeparatorSuffix());
        if (first != null && separator == null && second == null) {
            return quantity(comparator, first, unit, sn);
        }
        boolean pair =
                first != null && second != null && !"<>".equals(comparator) && separator != null;
        if (pair && separator.equals("-")) {
            return new Range()
                    .setLow(unit.copy().setValue(first))
                    .setHigh(unit.copy().setValue(second));
        }
        if (pair && (separator.equals(":") || separator.equals("/"))) {
            Type numerator = quantity(comparator, first, unit, sn);
            return numerator instanceof Quantity q
                    ? new Ratio().setNumerator(q).setDenominator(unit.copy().setValue(second))
                    : numerator;
        }
        return text(sn);
    }

    private static Type quantity(String comparator, BigDecimal value, Quantity unit, SN sn) {
        Quantity quantity = unit.copy().setValue(value);
        if (comparator == null || comparator.equals("=")) {
            return quantity;
        }
        return switch (comparator) {
            case "<", "<=", ">", ">=" ->
                    quantity.setComparator(QuantityComparator.fromCode(comparator));
            default -> text(sn);
        };
    }

    private static Type text(SN sn) {
        var parts = new StringBuilder();
        append(parts, StToString.map(sn.getSn1_Comparator()));
        append(parts, StToString.map(sn.getSn2_Num1()));
        append(parts, StToString.map(sn.getSn3_SeparatorSuffix()));
        append(parts, StToString.map(sn.getSn4_Num2()));
        return parts.isEmpty() ? null : new StringType(parts.toString());
    }

    private static void append(StringBuilder parts, String part) {
        if (part != null) {
            parts.append(parts.isEmpty() ? "" : " ").append(part);
        }
    }

    /** NM[Quantity]: null for anything but digits with a decimal point. */
    public static BigDecimal number(String text) {
        return text != null && text.matches("[+-]?\\d{1,18}(\\.\\d{1,18})?|[+-]?\\.\\d{1,18}")
                ? new BigDecimal(text)
                : null;
    }
}

package dev.isoline.dicom;

import java.math.BigDecimal;
import java.math.MathContext;

/** VR DS, PS3.5 6.2: a decimal of at most 16 characters. */
final class DecimalString {

    private static final int MOST = 16;

    private DecimalString() {}

    /** The shortest text of the value, rounded where it would not fit. */
    static String of(int tag, double value) throws DicomException {
        if (!Double.isFinite(value)) {
            throw new DicomException(tag, "is not a finite number");
        }
        var decimal = new BigDecimal(Double.toString(value)).stripTrailingZeros();
        for (int digits = MOST; ; digits--) {
            var rounded = decimal.round(new MathContext(digits)).stripTrailingZeros();
            String plain = rounded.toPlainString();
            String text = plain.length() <= MOST ? plain : rounded.toString();
            if (text.length() <= MOST) {
                return text;
            }
        }
    }

    static double parse(int tag, String text) throws DicomException {
        try {
            return new BigDecimal(text.strip()).doubleValue();
        } catch (NumberFormatException e) {
            throw new DicomException(tag, "is not a decimal string");
        }
    }
}

package dev.isoline.dicom;

import java.math.BigDecimal;
import java.math.MathContext;

/** VR DS, PS3.5 6.2: a decimal of at most 16 characters. */
final class DecimalString {

    private static final int MOST = 16;
    private static final int LONGEST_READ = 64;

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

    /** A text that is too long is read as long as it costs nothing. */
    static double parse(int tag, String text) throws DicomException {
        try {
            double value =
                    text.length() <= LONGEST_READ
                            ? new BigDecimal(text.strip()).doubleValue()
                            : Double.NaN;
            if (Double.isFinite(value)) {
                return value;
            }
        } catch (NumberFormatException e) {
            // said below
        }
        throw new DicomException(tag, "is not a decimal string");
    }
}

package dev.isoline.intake;

import java.math.BigInteger;
import java.util.Locale;

/**
 * Numbers Isoline gives an order: derived from its id, so that the same order gets the same ones.
 * At most 16 characters, the limit of a DICOM SH (PS3.5 6.2).
 */
final class OrderNumbers {

    private OrderNumbers() {}

    /** Filler order number, ORC-3. */
    static String filler(String orderId) {
        return "F" + digits(orderId);
    }

    /** Accession number, (0008,0050). */
    static String accession(String orderId) {
        return "A" + digits(orderId);
    }

    /** 13 base-36 digits hold 67 bits of the id. */
    private static String digits(String orderId) {
        BigInteger id = new BigInteger(orderId.replace("-", ""), 16);
        String text = id.toString(36).toUpperCase(Locale.ROOT);
        return text.substring(Math.max(0, text.length() - 13));
    }
}

package dev.isoline.conformance.gateway;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A complete order of a patient of its own, as OMG^O19.
 *
 * @param number its placer order number; the control id is derived from it
 */
record Order(String number) {

    /** System of the placer order numbers: the authority HARROWBAY in {@link GatewayUnderTest}. */
    static final String SYSTEM = "urn:oid:2.999.10.1";

    private static final Pattern NUMBER = Pattern.compile("\\bORD-\\d+-\\d+\\b");
    private static final String TEMPLATE = template();

    static Order of(int connection, int n) {
        return new Order("ORD-" + connection + "-" + n);
    }

    /** The order a message or a resource speaks of. */
    static String numberIn(String text) {
        Matcher number = NUMBER.matcher(text);
        return number.find() ? number.group() : "no order";
    }

    String controlId() {
        return number.replace("ORD", "MSG");
    }

    byte[] message() {
        return TEMPLATE.replace("{control}", controlId())
                .replace("{patient}", number.replace("ORD", "MR"))
                .replace("{placer}", number)
                .replace("\n", "\r")
                .getBytes(StandardCharsets.UTF_8);
    }

    private static String template() {
        try (var in = Order.class.getResourceAsStream("order.hl7")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new ExceptionInInitializerError(e);
        }
    }
}

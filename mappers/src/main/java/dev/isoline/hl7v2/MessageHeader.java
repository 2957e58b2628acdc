package dev.isoline.hl7v2;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * MSH as it came, HL7 v2.5.1 ch. 2.15.9: enough to route, recognise and answer a message, however
 * broken the rest of it is.
 *
 * @param delimiters its own; the recommended ones when there is no MSH
 * @param encoding what it was read with, and what the answer is written with
 * @param fields MSH-1, MSH-2, …; undecoded text, escapes and all; empty when there is no MSH
 */
public record MessageHeader(Delimiters delimiters, Charset encoding, List<String> fields) {

    /** Reads the first segment; never throws. */
    public static MessageHeader peek(byte[] raw) {
        return HeaderLine.read(raw);
    }

    /** Whether the bytes began with an MSH segment that declares usable delimiters. */
    public boolean isReadable() {
        return !fields.isEmpty();
    }

    /** MSH-{@code number} as sent; empty when absent. */
    public String field(int number) {
        return number <= fields.size() ? fields.get(number - 1) : "";
    }

    /** A component of the first repetition of MSH-{@code number}; both count from 1. */
    public String component(int number, int component) {
        String repetition = part(field(number), delimiters.repetition(), 1);
        return part(repetition, delimiters.component(), component);
    }

    public String sendingApplication() {
        return component(3, 1);
    }

    public String sendingFacility() {
        return component(4, 1);
    }

    public String receivingApplication() {
        return component(5, 1);
    }

    public String receivingFacility() {
        return component(6, 1);
    }

    public String messageCode() {
        return component(9, 1);
    }

    public String triggerEvent() {
        return component(9, 2);
    }

    public String messageStructure() {
        return component(9, 3);
    }

    /** MSH-9.1 and MSH-9.2, such as {@code ORM^O01}. */
    public String messageType() {
        return triggerEvent().isEmpty() ? messageCode() : messageCode() + "^" + triggerEvent();
    }

    public String controlId() {
        return field(10);
    }

    public String processingId() {
        return component(11, 1);
    }

    public String version() {
        return component(12, 1);
    }

    public String acceptAcknowledgment() {
        return component(15, 1);
    }

    public String applicationAcknowledgment() {
        return component(16, 1);
    }

    /** First repetition of MSH-18, HL7 table 0211. */
    public String characterSet() {
        return component(18, 1);
    }

    static MessageHeader unreadable() {
        return new MessageHeader(Delimiters.RECOMMENDED, StandardCharsets.UTF_8, List.of());
    }

    private static String part(String text, char delimiter, int number) {
        int from = 0;
        for (int skipped = 1; skipped < number; skipped++) {
            from = text.indexOf(delimiter, from) + 1;
            if (from == 0) {
                return "";
            }
        }
        int to = text.indexOf(delimiter, from);
        return text.substring(from, to < 0 ? text.length() : to);
    }
}

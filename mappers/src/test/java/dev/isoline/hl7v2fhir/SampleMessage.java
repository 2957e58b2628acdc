package dev.isoline.hl7v2fhir;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A smallest order with one segment of every kind, into which a test writes fields. */
final class SampleMessage {

    private static final List<String> SMALLEST =
            List.of(
                    "MSH|^~\\&|HBEHR|HARROWBAY|ISOLINE|TERN|20261103101500||OMG^O19^OMG_O19|M1|P|2.5.1",
                    "PID|1||4711^^^HARROWBAY^MR||Berg^Anna",
                    "NK1|1",
                    "PV1|1",
                    "IN1|1",
                    "ORC|NW|P1^HBEHR",
                    "TQ1|1",
                    "OBR|1|||54",
                    "NTE|1",
                    "DG1|1",
                    "OBX|1||1234-5");

    private SampleMessage() {}

    /**
     * @param given {@code ORC-2=;OBR-2={P9^HBEHR}}: fields to write; the braces go
     */
    static String with(String given) {
        return write(given.replaceAll("[{}]", ""));
    }

    /** The same without what stands in braces. */
    static String without(String given) {
        return write(given.replaceAll("\\{[^}]*}", ""));
    }

    private static String write(String edits) {
        List<String> segments = new ArrayList<>(SMALLEST);
        for (String edit : edits.split(";")) {
            String[] parts = edit.split("=", 2);
            String[] place = parts[0].split("-");
            segments.replaceAll(
                    s -> s.startsWith(place[0]) ? put(s, Integer.parseInt(place[1]), parts[1]) : s);
        }
        return String.join("\r", segments);
    }

    private static String put(String segment, int field, String value) {
        String[] fields = segment.split("\\|", -1);
        String[] wide = Arrays.copyOf(fields, Math.max(fields.length, field + 1));
        for (int i = fields.length; i < wide.length; i++) {
            wide[i] = "";
        }
        wide[field] = value;
        return String.join("|", wide);
    }
}

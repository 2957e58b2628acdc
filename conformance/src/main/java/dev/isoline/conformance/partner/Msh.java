package dev.isoline.conformance.partner;

import java.nio.charset.StandardCharsets;

/** Fields of the message header of a message with the usual separators. */
record Msh(String[] parts) {

    static Msh of(byte[] message) {
        String text = new String(message, StandardCharsets.ISO_8859_1);
        return new Msh(text.split("\r", 2)[0].split("\\|", -1));
    }

    /** MSH-1 is the separator itself, so the second part is MSH-2. */
    String field(int number) {
        return number - 1 < parts.length ? parts[number - 1] : "";
    }

    String component(int field, int number) {
        String[] components = field(field).split("\\^");
        return number <= components.length ? components[number - 1] : "";
    }
}

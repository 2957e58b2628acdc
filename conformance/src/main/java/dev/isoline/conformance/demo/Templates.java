package dev.isoline.conformance.demo;

import java.io.IOException;
import java.nio.charset.StandardCharsets;

/** The messages the clinics send; kept in the resources so that they can be read as they are. */
public final class Templates {

    private Templates() {}

    /** Lines of the resource become segments, each ended by a carriage return. */
    public static byte[] hl7v2(String name) throws IOException {
        return text(name).replace("\n", "\r").getBytes(StandardCharsets.UTF_8);
    }

    public static String text(String name) throws IOException {
        try (var in = Templates.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}

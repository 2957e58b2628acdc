package dev.isoline.order;

import java.nio.charset.StandardCharsets;
import java.util.UUID;

/** Identifiers derived from what they identify, so that the same input makes the same objects. */
public final class StableId {

    private StableId() {}

    /** Name-based UUID (RFC 4122 4.3, version 3) over the parts, which may hold any character. */
    public static String of(String... parts) {
        var name = new StringBuilder("https://isoline.example/fhir");
        for (String part : parts) {
            name.append('\u001f').append(part);
        }
        return UUID.nameUUIDFromBytes(name.toString().getBytes(StandardCharsets.UTF_8)).toString();
    }
}

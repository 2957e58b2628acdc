package dev.isoline.dicom;

import java.math.BigInteger;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.UUID;

/** UIDs derived from what they identify: {@code 2.25.} and a UUID as a decimal, PS3.5 B.2. */
public final class Uid {

    /** Longest UID, PS3.5 9.1. */
    public static final int MOST = 64;

    private Uid() {}

    /** UID of a name-based UUID (RFC 4122 4.3, version 3) over the parts, in their order. */
    public static String of(String... parts) {
        var name = new StringBuilder("https://isoline.example/dicom");
        for (String part : parts) {
            name.append('\u001f').append(part);
        }
        return of(UUID.nameUUIDFromBytes(name.toString().getBytes(StandardCharsets.UTF_8)));
    }

    public static String of(UUID uuid) {
        byte[] bits =
                ByteBuffer.allocate(16)
                        .putLong(uuid.getMostSignificantBits())
                        .putLong(uuid.getLeastSignificantBits())
                        .array();
        return "2.25." + new BigInteger(1, bits);
    }

    /** Digits and dots, no leading zero in a component, at most 64 characters; PS3.5 9.1. */
    public static boolean isValid(String uid) {
        return uid.length() <= MOST && uid.matches("(0|[1-9]\\d*)(\\.(0|[1-9]\\d*))*");
    }
}

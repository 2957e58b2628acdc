package dev.isoline.conformance.partner;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.concurrent.atomic.AtomicLong;

/** The answer of a clinic that takes everything: AA in original mode (HL7 v2.5.1 ch. 2.9.2). */
final class Acknowledgement {

    private static final DateTimeFormatter TS =
            DateTimeFormatter.ofPattern("yyyyMMddHHmmss'+0000'").withZone(ZoneOffset.UTC);

    private static final AtomicLong NEXT = new AtomicLong();

    private Acknowledgement() {}

    static byte[] accept(byte[] message) {
        Msh msh = Msh.of(message);
        String answer =
                String.join(
                        "|",
                        "MSH",
                        msh.field(2),
                        msh.field(5),
                        msh.field(6),
                        msh.field(3),
                        msh.field(4),
                        TS.format(Instant.now()),
                        "",
                        "ACK^" + msh.component(9, 2) + "^ACK",
                        "CLINIC" + NEXT.incrementAndGet(),
                        msh.field(11),
                        msh.field(12));
        String text = answer + "\rMSA|AA|" + msh.field(10) + "\r";
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }
}

package dev.isoline.hl7v2;

import static java.util.Map.entry;

import java.nio.charset.Charset;
import java.util.Map;
import java.util.Optional;

/** HL7 table 0211, alternate character sets (MSH-18), as far as the gateway reads them. */
public final class Table0211 {

    // spotless:off
    private static final Map<String, String> ROWS = Map.ofEntries(
            entry("ASCII",          "US-ASCII"),
            entry("8859/1",         "ISO-8859-1"),
            entry("8859/2",         "ISO-8859-2"),
            entry("8859/3",         "ISO-8859-3"),
            entry("8859/4",         "ISO-8859-4"),
            entry("8859/5",         "ISO-8859-5"),
            entry("8859/7",         "ISO-8859-7"),
            entry("8859/9",         "ISO-8859-9"),
            entry("8859/15",        "ISO-8859-15"),
            entry("UNICODE UTF-8",  "UTF-8"),
            entry("UTF-8",          "UTF-8"), // not in the table; common practice, no source
            entry("GB 18030-2000",  "GB18030"),
            entry("BIG-5",          "Big5"));
    // spotless:on

    private Table0211() {}

    /** Empty when the gateway does not read it; UTF-16 and UTF-32 cannot travel over MLLP. */
    public static Optional<Charset> charset(String code) {
        return Optional.ofNullable(ROWS.get(code)).map(Charset::forName);
    }
}

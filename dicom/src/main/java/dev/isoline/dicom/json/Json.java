package dev.isoline.dicom.json;

import java.util.List;
import java.util.Map;

/** A JSON value, RFC 8259 section 3. */
sealed interface Json {

    record Text(String value) implements Json {}

    /** A number as it was written. */
    record Numeral(String digits) implements Json {}

    record Array(List<Json> values) implements Json {}

    record Members(Map<String, Json> members) implements Json {}

    enum Literal implements Json {
        TRUE,
        FALSE,
        NULL
    }
}

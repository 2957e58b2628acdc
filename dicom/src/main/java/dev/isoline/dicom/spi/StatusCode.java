package dev.isoline.dicom.spi;

import java.util.List;

/**
 * The codes of PS3.7 annex C (2024e), of C-STORE (PS3.4 table B.2-1) and C-FIND (table K.4-1). A
 * narrower range stands before the one around it.
 *
 * @param from first code
 * @param to last code
 */
record StatusCode(int from, int to, StatusClass statusClass, String name) {

    // spotless:off
    private static final List<StatusCode> TABLE = List.of(
            one(0x0000,           StatusClass.SUCCESS, "success"),
            one(0xFF00,           StatusClass.PENDING, "pending"),
            one(0xFF01,           StatusClass.PENDING, "pending, optional keys not supported"),
            one(0xFE00,           StatusClass.CANCEL,  "cancelled"),
            one(0x0001,           StatusClass.WARNING, "warning"),
            one(0x0107,           StatusClass.WARNING, "attribute list error"),
            one(0x0116,           StatusClass.WARNING, "attribute value out of range"),
            one(0xB000,           StatusClass.WARNING, "coercion of data elements"),
            one(0xB006,           StatusClass.WARNING, "elements discarded"),
            one(0xB007,           StatusClass.WARNING, "data set does not match SOP class"),
            new StatusCode(0xB000, 0xBFFF, StatusClass.WARNING, "warning"),
            one(0x0105,           StatusClass.FAILURE, "no such attribute"),
            one(0x0106,           StatusClass.FAILURE, "invalid attribute value"),
            one(0x0110,           StatusClass.FAILURE, "processing failure"),
            one(0x0111,           StatusClass.FAILURE, "duplicate SOP instance"),
            one(0x0112,           StatusClass.FAILURE, "no such object instance"),
            one(0x0113,           StatusClass.FAILURE, "no such event type"),
            one(0x0114,           StatusClass.FAILURE, "no such argument"),
            one(0x0115,           StatusClass.FAILURE, "invalid argument value"),
            one(0x0117,           StatusClass.FAILURE, "invalid object instance"),
            one(0x0118,           StatusClass.FAILURE, "no such SOP class"),
            one(0x0119,           StatusClass.FAILURE, "class-instance conflict"),
            one(0x0120,           StatusClass.FAILURE, "missing attribute"),
            one(0x0121,           StatusClass.FAILURE, "missing attribute value"),
            one(0x0122,           StatusClass.FAILURE, "SOP class not supported"),
            one(0x0123,           StatusClass.FAILURE, "no such action type"),
            one(0x0124,           StatusClass.FAILURE, "not authorized"),
            one(0x0131,           StatusClass.FAILURE, "duplicate transaction UID"),
            one(0x0210,           StatusClass.FAILURE, "duplicate invocation"),
            one(0x0211,           StatusClass.FAILURE, "unrecognized operation"),
            one(0x0212,           StatusClass.FAILURE, "mistyped argument"),
            one(0x0213,           StatusClass.FAILURE, "resource limitation"),
            new StatusCode(0xA700, 0xA7FF, StatusClass.FAILURE, "out of resources"),
            new StatusCode(0xA900, 0xA9FF, StatusClass.FAILURE, "data set does not match SOP class"),
            new StatusCode(0xC000, 0xCFFF, StatusClass.FAILURE, "cannot understand, unable to process"),
            new StatusCode(0x0000, 0xFFFF, StatusClass.FAILURE, "failure"));
    // spotless:on

    private static StatusCode one(int code, StatusClass statusClass, String name) {
        return new StatusCode(code, code, statusClass, name);
    }

    static StatusClass statusClass(int code) {
        return row(code).statusClass;
    }

    static String name(int code) {
        return row(code).name;
    }

    private static StatusCode row(int code) {
        return TABLE.stream().filter(r -> r.from <= code && code <= r.to).findFirst().orElseThrow();
    }
}

package dev.isoline.hl7v2;

import dev.isoline.order.Problem;
import dev.isoline.order.Problem.Kind;
import java.util.List;

/**
 * HL7 table 0357, message error condition codes, as of v2.5.1, and what MSA-1 says with each: AR
 * when MSH does not fit this receiver or the fault is not the message's, AE for the rest (ch.
 * 2.9.2.2). The table's comment calls 204 to 206 rejections; here they are errors in the content,
 * so AE, and a conflict is 207 because 206 means a locked record.
 */
enum Table0357 {
    // spotless:off
    SEQUENCE                 ("100", "Segment sequence error",     'E'),
    REQUIRED                 ("101", "Required field missing",     'E'),
    DATA_TYPE                ("102", "Data type error",            'E'),
    VALUE                    ("103", "Table value not found",      'E'),
    UNSUPPORTED_MESSAGE      ("200", "Unsupported message type",   'R'),
    UNSUPPORTED_EVENT        ("201", "Unsupported event code",     'R'),
    UNSUPPORTED_PROCESSING_ID("202", "Unsupported processing id",  'R'),
    UNSUPPORTED_VERSION      ("203", "Unsupported version id",     'R'),
    UNSUPPORTED_CHARSET      ("102", "Data type error",            'R'),
    UNKNOWN_KEY              ("204", "Unknown key identifier",     'E'),
    DUPLICATE_KEY            ("205", "Duplicate key identifier",   'E'),
    CONFLICT                 ("207", "Application internal error", 'E'),
    INTERNAL                 ("207", "Application internal error", 'R');
    // spotless:on

    private final String code;
    private final String text;
    private final char answer;

    Table0357(String code, String text, char answer) {
        this.code = code;
        this.text = text;
        this.answer = answer;
    }

    static Table0357 of(Kind kind) {
        return valueOf(kind.name());
    }

    String code() {
        return code;
    }

    String text() {
        return text;
    }

    /** {@code A} accepted, {@code E} error, {@code R} rejected: second letter of MSA-1. */
    static char answer(List<Problem> problems) {
        var answers = problems.stream().filter(Problem::isError).map(p -> of(p.kind()).answer);
        return answers.max(Character::compare).orElse('A');
    }
}

package dev.isoline.dicom.spi;

/**
 * Status (0000,0900) of a response, PS3.7 annex C, and what its sender says about it.
 *
 * @param code 0 to FFFFH
 * @param comment Error Comment (0000,0902), at most 64 characters of ASCII go over the wire; empty
 *     where there is none. Holds no patient detail where we write it
 */
public record Status(int code, String comment) {

    public static final Status SUCCESS = of(0x0000);
    public static final Status CANCEL = of(0xFE00);
    public static final Status PENDING = of(0xFF00);

    /** A match; an optional key of the request was not supported for matching. */
    public static final Status PENDING_KEYS_NOT_SUPPORTED = of(0xFF01);

    public static final Status PROCESSING_FAILURE = of(0x0110);
    public static final Status NO_SUCH_INSTANCE = of(0x0112);
    public static final Status NO_SUCH_EVENT_TYPE = of(0x0113);
    public static final Status INVALID_ARGUMENT_VALUE = of(0x0115);
    public static final Status INVALID_INSTANCE = of(0x0117);
    public static final Status NO_SUCH_SOP_CLASS = of(0x0118);
    public static final Status CLASS_INSTANCE_CONFLICT = of(0x0119);
    public static final Status SOP_CLASS_NOT_SUPPORTED = of(0x0122);
    public static final Status NO_SUCH_ACTION = of(0x0123);
    public static final Status NOT_AUTHORIZED = of(0x0124);
    public static final Status DUPLICATE_TRANSACTION = of(0x0131);
    public static final Status UNRECOGNIZED_OPERATION = of(0x0211);
    public static final Status MISTYPED_ARGUMENT = of(0x0212);
    public static final Status RESOURCE_LIMITATION = of(0x0213);

    public static final Status OUT_OF_RESOURCES = of(0xA700);
    public static final Status DOES_NOT_MATCH_SOP_CLASS = of(0xA900);
    public static final Status COERCION = of(0xB000);
    public static final Status ELEMENTS_DISCARDED = of(0xB006);
    public static final Status CANNOT_UNDERSTAND = of(0xC000);
    public static final Status UNABLE_TO_PROCESS = of(0xC001);

    private static final int MOST = 0xFFFF;

    public Status {
        if (code < 0 || code > MOST) {
            throw new IllegalArgumentException("a status is 0 to FFFFH");
        }
    }

    public static Status of(int code) {
        return new Status(code, "");
    }

    /** The same code with a comment. */
    public Status because(String reason) {
        return new Status(code, reason);
    }

    /** What kind of status it is; a code outside annex C is a failure. */
    public StatusClass statusClass() {
        return StatusCode.statusClass(code);
    }

    /** Its name as the standard prints it; of the class where the code has none. */
    public String name() {
        return StatusCode.name(code);
    }

    public boolean isSuccess() {
        return statusClass() == StatusClass.SUCCESS;
    }

    /** Success or warning: the operation was performed. */
    public boolean isPerformed() {
        return isSuccess() || statusClass() == StatusClass.WARNING;
    }

    public boolean isPending() {
        return statusClass() == StatusClass.PENDING;
    }

    /** Code, name and comment, such as {@code A700H out of resources: disk full}. */
    @Override
    public String toString() {
        return String.format("%04XH ", code) + name() + (comment.isEmpty() ? "" : ": " + comment);
    }
}

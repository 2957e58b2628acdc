package dev.isoline.order;

/** What can happen to an order. */
public enum OrderEvent {
    /** Something required is missing, or what is told contradicts what is known. */
    HELD("A hold"),
    /** Everything required is there. */
    RELEASED("A release"),
    /** The monitoring service will not do it. */
    REJECTED("A rejection"),
    /** It is offered to the recorder station. */
    SCHEDULED("Scheduling"),
    /** The clinic asks to cancel it (ORC-1 = CA). */
    CANCEL_REQUESTED("A request to cancel"),
    /** The recorder was put on the patient. */
    RECORDING_STARTED("The start of a recording"),
    /** A recording for it came in. */
    RECORDING_RECEIVED("A recording"),
    /** The recording cannot be analysed. */
    RECORDING_UNUSABLE("The loss of a recording"),
    /** The program computed a preliminary result. */
    RESULT_COMPUTED("A computed result"),
    /** A clinician made the result final. */
    RESULT_CONFIRMED("The confirmation of a result"),
    /** A clinician corrected a final result. */
    RESULT_CORRECTED("The correction of a result"),
    /** It was placed for the wrong patient or by mistake. */
    ENTERED_IN_ERROR("Marking the order as entered in error");

    private final String words;

    OrderEvent(String words) {
        this.words = words;
    }

    /** The event as the subject of a sentence. */
    public String words() {
        return words;
    }
}

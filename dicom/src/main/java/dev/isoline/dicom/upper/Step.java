package dev.isoline.dicom.upper;

/** What an {@link Action} consists of. */
enum Step {
    /** Issue TRANSPORT CONNECT. */
    CONNECT,
    /** Send the PDU the event came with. */
    SEND,
    /** Issue the indication or confirmation primitive of the PDU received. */
    ISSUE,
    /** Issue A-P-ABORT indication. */
    ISSUE_P_ABORT,
    /** Send A-ASSOCIATE-RJ of the service provider. */
    SEND_REJECTION,
    /** Send A-ABORT, source service user. */
    SEND_ABORT_OF_USER,
    /** Send A-ABORT, source service provider. */
    SEND_ABORT_OF_PROVIDER,
    START_ARTIM,
    STOP_ARTIM,
    /** Close the transport connection. */
    CLOSE
}

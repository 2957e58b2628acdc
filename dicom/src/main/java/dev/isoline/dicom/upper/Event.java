package dev.isoline.dicom.upper;

/** Events of the upper layer protocol machine, the rows of PS3.8 table 9-10. */
enum Event {
    /** Local user asks for an association. */
    A_ASSOCIATE_REQUEST,
    /** The transport connection we asked for is open. */
    TRANSPORT_CONFIRMATION,
    A_ASSOCIATE_AC_PDU,
    A_ASSOCIATE_RJ_PDU,
    /** Somebody opened a transport connection to us. */
    TRANSPORT_INDICATION,
    A_ASSOCIATE_RQ_PDU,
    /** Local user accepts. */
    A_ASSOCIATE_RESPONSE_ACCEPT,
    /** Local user rejects. */
    A_ASSOCIATE_RESPONSE_REJECT,
    P_DATA_REQUEST,
    P_DATA_TF_PDU,
    A_RELEASE_REQUEST,
    A_RELEASE_RQ_PDU,
    A_RELEASE_RP_PDU,
    A_RELEASE_RESPONSE,
    A_ABORT_REQUEST,
    A_ABORT_PDU,
    TRANSPORT_CLOSED,
    ARTIM_EXPIRED,
    INVALID_PDU
}

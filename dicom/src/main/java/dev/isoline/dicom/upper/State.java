package dev.isoline.dicom.upper;

/** States of the upper layer protocol machine, PS3.8 9.2.1. */
enum State {
    /** Idle. */
    STA_1,
    /** Transport connection open, awaiting A-ASSOCIATE-RQ. */
    STA_2,
    /** Awaiting local A-ASSOCIATE response primitive. */
    STA_3,
    /** Awaiting transport connection opening to complete. */
    STA_4,
    /** Awaiting A-ASSOCIATE-AC or A-ASSOCIATE-RJ. */
    STA_5,
    /** Association established and ready for data transfer. */
    STA_6,
    /** Awaiting A-RELEASE-RP. */
    STA_7,
    /** Awaiting local A-RELEASE response primitive. */
    STA_8,
    /** Release collision, requestor side: awaiting A-RELEASE response primitive. */
    STA_9,
    /** Release collision, acceptor side: awaiting A-RELEASE-RP. */
    STA_10,
    /** Release collision, requestor side: awaiting A-RELEASE-RP. */
    STA_11,
    /** Release collision, acceptor side: awaiting A-RELEASE response primitive. */
    STA_12,
    /** Awaiting transport connection close; the association no longer exists. */
    STA_13
}

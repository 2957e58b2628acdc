package dev.isoline.dicom.upper;

/** PDU types, PS3.8 9.3.1. */
enum PduType {
    ASSOCIATE_RQ(0x01, Event.A_ASSOCIATE_RQ_PDU, Pdu.AssociateRq.class),
    ASSOCIATE_AC(0x02, Event.A_ASSOCIATE_AC_PDU, Pdu.AssociateAc.class),
    ASSOCIATE_RJ(0x03, Event.A_ASSOCIATE_RJ_PDU, Pdu.AssociateRj.class),
    P_DATA_TF(0x04, Event.P_DATA_TF_PDU, Pdu.PDataTf.class),
    RELEASE_RQ(0x05, Event.A_RELEASE_RQ_PDU, Pdu.ReleaseRq.class),
    RELEASE_RP(0x06, Event.A_RELEASE_RP_PDU, Pdu.ReleaseRp.class),
    ABORT(0x07, Event.A_ABORT_PDU, Pdu.Abort.class);

    private final int code;
    private final Event received;
    private final Class<? extends Pdu> pdu;

    PduType(int code, Event received, Class<? extends Pdu> pdu) {
        this.code = code;
        this.received = received;
        this.pdu = pdu;
    }

    int code() {
        return code;
    }

    Event received() {
        return received;
    }

    /**
     * @throws InvalidPdu where no PDU has this type
     */
    static PduType of(int code) throws InvalidPdu {
        if (code < 1 || code > values().length) {
            throw new InvalidPdu(InvalidPdu.UNRECOGNIZED, "PDU of type " + code);
        }
        return values()[code - 1];
    }

    static PduType of(Pdu pdu) {
        for (PduType type : values()) {
            if (type.pdu.isInstance(pdu)) {
                return type;
            }
        }
        throw new IllegalArgumentException(pdu.toString());
    }
}

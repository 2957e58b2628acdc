package dev.isoline.dicom.upper;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Optional;

/** PDUs from a connection, and the PDVs of a P-DATA-TF one by one; PS3.8 9.3.1 and 9.3.5. */
final class PduInput {

    /** Type, reserved byte, length. */
    private static final int HEADER = 6;

    /** Length, context id, message control header. */
    private static final int PDV_HEADER = 6;

    /** A request with 128 contexts of all transfer syntaxes there are stays far below. */
    private static final int LONGEST_ASSOCIATION_PDU = 1 << 20;

    private static final ByteBuffer NOTHING = ByteBuffer.allocate(0);

    private final Incoming in;
    private final long maxLength;

    /** Bytes of the P-DATA-TF and of its PDV that were not read yet. */
    private long pduLeft;

    private long pdvLeft;

    /**
     * @param maxLength of a P-DATA-TF, as announced; 0 no limit
     */
    PduInput(Incoming in, int maxLength) {
        this.in = in;
        this.maxLength = maxLength == 0 ? Long.MAX_VALUE : maxLength;
    }

    /** The next PDU; what is left of a P-DATA-TF is skipped. */
    Pdu pdu(Wait wait) throws IOException {
        in.skip(pduLeft, inside(wait));
        pduLeft = 0;
        pdvLeft = 0;
        ByteBuffer header = in.atLeast(HEADER, wait);
        int code = header.get() & 0xFF;
        header.get(); // reserved, not tested
        long length = Integer.toUnsignedLong(header.getInt());
        PduType type = PduType.of(code);
        return type == PduType.P_DATA_TF ? data(length) : other(type, length, inside(wait));
    }

    /** Within a PDU the peer owes us its rest. */
    private static Wait inside(Wait wait) {
        return wait == Wait.REQUEST || wait == Wait.FREELY ? Wait.RESPONSE : wait;
    }

    private Pdu data(long length) throws InvalidPdu {
        if (length > maxLength) {
            throw InvalidPdu.parameter("a P-DATA-TF of " + length + " bytes, more than announced");
        }
        if (length < PDV_HEADER) {
            throw InvalidPdu.parameter("a P-DATA-TF without a PDV");
        }
        pduLeft = length;
        return new Pdu.PDataTf(NOTHING);
    }

    private Pdu other(PduType type, long length, Wait wait) throws IOException {
        if (length > LONGEST_ASSOCIATION_PDU) {
            throw InvalidPdu.parameter("a PDU of " + length + " bytes");
        }
        return PduDecoder.decode(type, ByteBuffer.wrap(in.bytes((int) length, wait)));
    }

    /** The next PDV of the P-DATA-TF read last; empty at its end. */
    Optional<Pdv> pdv(Wait wait) throws IOException {
        in.skip(pdvLeft, inside(wait));
        pduLeft -= pdvLeft;
        pdvLeft = 0;
        if (pduLeft == 0) {
            return Optional.empty();
        }
        if (pduLeft < PDV_HEADER) {
            throw InvalidPdu.parameter("a PDV without a header");
        }
        ByteBuffer header = in.atLeast(PDV_HEADER, inside(wait));
        long length = Integer.toUnsignedLong(header.getInt());
        if (length < 2 || length > pduLeft - 4) {
            throw InvalidPdu.parameter("a PDV of " + length + " bytes in " + pduLeft);
        }
        pduLeft -= PDV_HEADER;
        pdvLeft = length - 2;
        return Optional.of(Pdv.of(header.get() & 0xFF, header.get() & 0xFF));
    }

    /** Next bytes of the PDV; empty at its end. */
    ByteBuffer fragment(Wait wait) throws IOException {
        if (pdvLeft == 0) {
            return NOTHING;
        }
        ByteBuffer some = in.some(pdvLeft, wait);
        pdvLeft -= some.remaining();
        pduLeft -= some.remaining();
        return some;
    }

    boolean arrives(int millis) throws IOException {
        return pduLeft > 0 || in.arrives(millis);
    }

    void end() {
        in.end();
    }
}

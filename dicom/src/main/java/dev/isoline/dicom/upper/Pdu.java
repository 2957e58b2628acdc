package dev.isoline.dicom.upper;

import java.nio.ByteBuffer;
import java.util.List;

/** Protocol data units, PS3.8 9.3. */
public sealed interface Pdu {

    /** DICOM Application Context Name, PS3.7 A.2.1. */
    String APPLICATION_CONTEXT = "1.2.840.10008.3.1.1.1";

    /** The event its arrival is. */
    default Event received() {
        return PduType.of(this).received();
    }

    /**
     * A-ASSOCIATE-RQ, 9.3.2.
     *
     * @param version protocol version; of it only bit 0 counts
     * @param called called AE title, as it stands in its 16 bytes
     * @param calling calling AE title, likewise
     * @param applicationContext application context name; empty where there is none
     * @param contexts presentation contexts proposed
     * @param user user information
     */
    record AssociateRq(
            int version,
            String called,
            String calling,
            String applicationContext,
            List<ProposedContext> contexts,
            UserInformation user)
            implements Pdu {}

    /** A-ASSOCIATE-AC, 9.3.3; the titles are those of the request. */
    record AssociateAc(
            String called, String calling, List<ContextResult> contexts, UserInformation user)
            implements Pdu {}

    /** A-ASSOCIATE-RJ, 9.3.4. */
    record AssociateRj(int result, int source, int reason) implements Pdu {}

    /**
     * P-DATA-TF, 9.3.5.
     *
     * @param octets the PDU to send; empty for one received, whose PDVs are read one by one
     */
    record PDataTf(ByteBuffer octets) implements Pdu {}

    /** A-RELEASE-RQ, 9.3.6. */
    record ReleaseRq() implements Pdu {}

    /** A-RELEASE-RP, 9.3.7. */
    record ReleaseRp() implements Pdu {}

    /** A-ABORT, 9.3.8. */
    record Abort(int source, int reason) implements Pdu {}

    /** A presentation context of an A-ASSOCIATE-RQ, 9.3.2.2. */
    record ProposedContext(int id, String abstractSyntax, List<String> transferSyntaxes) {}

    /**
     * A presentation context of an A-ASSOCIATE-AC, 9.3.3.2.
     *
     * @param result 0 acceptance, 1 user rejection, 2 no reason, 3 abstract syntax not supported, 4
     *     transfer syntaxes not supported
     */
    record ContextResult(int id, int result, String transferSyntax) {}
}

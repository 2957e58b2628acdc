package dev.isoline.dicom.dimse;

import dev.isoline.dicom.spi.CommitmentResult;
import dev.isoline.dicom.spi.Commitments;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.dicom.spi.SopReference;

/** Command sets of the Storage Commitment Push Model, PS3.7 10.1.1 and 10.1.4. */
final class CommitmentScu {

    private CommitmentScu() {}

    /** N-ACTION-RQ. */
    static CommandSet request(int messageId) {
        return CommandSet.request(Field.N_ACTION, messageId)
                .uid(CommandTag.RequestedSOPClassUID, SopClass.STORAGE_COMMITMENT)
                .uid(CommandTag.RequestedSOPInstanceUID, SopClass.STORAGE_COMMITMENT_INSTANCE)
                .us(CommandTag.ActionTypeID, Commitments.REQUEST);
    }

    /** N-EVENT-REPORT-RQ. */
    static CommandSet report(int messageId, CommitmentResult result) {
        return CommandSet.request(Field.N_EVENT_REPORT, messageId)
                .affected(
                        new SopReference(
                                SopClass.STORAGE_COMMITMENT, SopClass.STORAGE_COMMITMENT_INSTANCE))
                .us(CommandTag.EventTypeID, Commitments.eventType(result));
    }
}

package dev.isoline.dicom.spi;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.spi.CommitmentResult.Failure;
import java.util.ArrayList;
import java.util.List;

/** Data sets of the Storage Commitment Push Model, PS3.4 tables J.3-1 and J.3-2. */
public final class Commitments {

    /** Action Type ID of a request. */
    public static final int REQUEST = 1;

    /** Event Type IDs of a result. */
    public static final int ALL_COMMITTED = 1;

    public static final int FAILURES_EXIST = 2;

    private Commitments() {}

    /** The Action Information of a request. */
    public static DataSet dataSet(CommitmentRequest request) throws DicomException {
        return new DataSet()
                .putText(Tag.TransactionUID, request.transaction())
                .putItems(Tag.ReferencedSOPSequence, items(request.references()));
    }

    /**
     * @throws DicomException where the Action Information lacks what it must have
     */
    public static CommitmentRequest request(DataSet dataSet) throws DicomException {
        var references = references(dataSet);
        if (references.isEmpty()) {
            throw new DicomException(Tag.ReferencedSOPSequence, "has no item");
        }
        return new CommitmentRequest(transaction(dataSet), references);
    }

    /** The Event Type ID a result is reported with. */
    public static int eventType(CommitmentResult result) {
        return result.failed().isEmpty() ? ALL_COMMITTED : FAILURES_EXIST;
    }

    /** The Event Information of a result. */
    public static DataSet dataSet(CommitmentResult result) throws DicomException {
        var dataSet = new DataSet().putText(Tag.TransactionUID, result.transaction());
        if (!result.committed().isEmpty()) {
            dataSet.putItems(Tag.ReferencedSOPSequence, items(result.committed()));
        }
        if (!result.failed().isEmpty()) {
            var failed = new ArrayList<DataSet>();
            for (Failure failure : result.failed()) {
                failed.add(
                        item(failure.reference())
                                .putInts(Tag.FailureReason, failure.reason().code()));
            }
            dataSet.putItems(Tag.FailedSOPSequence, failed);
        }
        return dataSet;
    }

    /**
     * @throws DicomException where the Event Information lacks what it must have
     */
    public static CommitmentResult result(DataSet dataSet) throws DicomException {
        var failed = new ArrayList<Failure>();
        for (DataSet item : dataSet.items(Tag.FailedSOPSequence)) {
            long reason =
                    item.integer(Tag.FailureReason).orElse((long) Status.PROCESSING_FAILURE.code());
            failed.add(new Failure(reference(item), Status.of((int) reason)));
        }
        return new CommitmentResult(transaction(dataSet), references(dataSet), failed);
    }

    private static String transaction(DataSet dataSet) throws DicomException {
        return dataSet.text(Tag.TransactionUID)
                .orElseThrow(() -> new DicomException(Tag.TransactionUID, "is missing"));
    }

    private static List<SopReference> references(DataSet dataSet) throws DicomException {
        var references = new ArrayList<SopReference>();
        for (DataSet item : dataSet.items(Tag.ReferencedSOPSequence)) {
            references.add(reference(item));
        }
        return references;
    }

    private static SopReference reference(DataSet item) throws DicomException {
        return new SopReference(
                uid(item, Tag.ReferencedSOPClassUID), uid(item, Tag.ReferencedSOPInstanceUID));
    }

    private static String uid(DataSet item, int tag) throws DicomException {
        return item.text(tag).orElseThrow(() -> new DicomException(tag, "is missing"));
    }

    private static List<DataSet> items(List<SopReference> references) throws DicomException {
        var items = new ArrayList<DataSet>();
        for (SopReference reference : references) {
            items.add(item(reference));
        }
        return items;
    }

    private static DataSet item(SopReference reference) throws DicomException {
        return new DataSet()
                .putText(Tag.ReferencedSOPClassUID, reference.sopClass())
                .putText(Tag.ReferencedSOPInstanceUID, reference.sopInstance());
    }
}

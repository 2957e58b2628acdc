package dev.isoline.dicom.dcm4che;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.spi.AcceptedContext;
import dev.isoline.dicom.spi.Association;
import dev.isoline.dicom.spi.CommitmentRequest;
import dev.isoline.dicom.spi.CommitmentResult;
import dev.isoline.dicom.spi.Commitments;
import dev.isoline.dicom.spi.Matches;
import dev.isoline.dicom.spi.Offer;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Role;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.dicom.spi.Status;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.dcm4che3.data.Attributes;
import org.dcm4che3.io.DicomInputStream;
import org.dcm4che3.io.DicomStreamException;
import org.dcm4che3.net.DataWriter;
import org.dcm4che3.net.DimseRSP;
import org.dcm4che3.net.Priority;

/** The requestor's side of an association. */
final class ScuAssociation implements Association {

    /** Matches held while the caller looks at one. */
    private static final int AHEAD = 16;

    private final Node node;
    private final org.dcm4che3.net.Association association;
    private final Contexts contexts;
    private final CommitmentArrivals arrivals;

    ScuAssociation(
            Node node,
            org.dcm4che3.net.Association association,
            Offer offer,
            CommitmentArrivals arrivals) {
        this.node = node;
        this.association = association;
        this.contexts = Contexts.of(offer, association);
        this.arrivals = arrivals;
    }

    @Override
    public Peer peer() {
        return Peers.of(association);
    }

    @Override
    public List<AcceptedContext> accepted() {
        return contexts.accepted();
    }

    @Override
    public Status echo() throws IOException {
        contexts.of(SopClass.VERIFICATION, Role::scu);
        return status(association::cecho);
    }

    @Override
    public Status store(Path file) throws IOException {
        try (var in = new DicomInputStream(file.toFile())) {
            Attributes meta = in.readFileMetaInformation();
            if (meta == null) {
                throw new DicomException("the file is no DICOM file, PS3.10 7.1");
            }
            String sopClass = meta.getString(Tag.MediaStorageSOPClassUID);
            String syntax = meta.getString(Tag.TransferSyntaxUID);
            if (contexts.accept(sopClass, syntax)) {
                String instance = meta.getString(Tag.MediaStorageSOPInstanceUID);
                return store(sopClass, instance, syntax, (out, uid) -> out.copyFrom(in));
            }
        } catch (DicomStreamException e) {
            throw new DicomException("the file is no DICOM file: " + e.getMessage());
        }
        return encodedAnew(file);
    }

    private Status encodedAnew(Path file) throws IOException {
        try (var channel = FileChannel.open(file)) {
            return store(Part10.read(channel, ReadLimits.DEFAULT).dataSet());
        }
    }

    @Override
    public Status store(DataSet object) throws IOException {
        String sopClass = required(object, Tag.SOPClassUID);
        TransferSyntax syntax = contexts.of(sopClass, Role::scu).transferSyntax();
        return store(
                sopClass,
                required(object, Tag.SOPInstanceUID),
                syntax.uid(),
                (out, uid) -> DataSets.write(out, object, syntax));
    }

    private static String required(DataSet object, int tag) throws DicomException {
        return object.text(tag).orElseThrow(() -> new DicomException(tag, "is missing"));
    }

    private Status store(String sopClass, String instance, String syntax, DataWriter data)
            throws IOException {
        return status(() -> association.cstore(sopClass, instance, Priority.NORMAL, data, syntax));
    }

    @Override
    public Status find(String sopClass, DataSet keys, Matches matches) throws IOException {
        String syntax = contexts.of(sopClass, Role::scu).transferSyntax().uid();
        Attributes identifier = DataSets.attributes(keys);
        return Faults.translated(
                () ->
                        matched(
                                association.cfind(
                                        sopClass, Priority.NORMAL, identifier, syntax, 0, AHEAD),
                                matches));
    }

    private Status matched(DimseRSP responses, Matches matches)
            throws IOException, InterruptedException {
        boolean wanted = true;
        while (responses.next()) {
            Status status = Commands.status(responses.getCommand());
            if (!status.isPending()) {
                return status;
            }
            if (wanted && !matches.match(DataSets.dataSet(responses.getDataset()), status)) {
                wanted = false;
                responses.cancel(association);
            }
        }
        throw new IOException("the peer ended a C-FIND without a final response");
    }

    @Override
    public Status requestCommitment(CommitmentRequest request) throws IOException {
        contexts.of(SopClass.STORAGE_COMMITMENT, Role::scu);
        Attributes information = DataSets.attributes(Commitments.dataSet(request));
        return status(
                () ->
                        association.naction(
                                SopClass.STORAGE_COMMITMENT,
                                SopClass.STORAGE_COMMITMENT_INSTANCE,
                                Commitments.REQUEST,
                                information,
                                null));
    }

    @Override
    public boolean awaitCommitment(Duration atMost) throws IOException {
        return Faults.translated(() -> arrivals.await(association, atMost));
    }

    @Override
    public Status reportCommitment(CommitmentResult result) throws IOException {
        contexts.of(SopClass.STORAGE_COMMITMENT, Role::scp);
        Attributes information = DataSets.attributes(Commitments.dataSet(result));
        return status(
                () ->
                        association.neventReport(
                                SopClass.STORAGE_COMMITMENT,
                                SopClass.STORAGE_COMMITMENT_INSTANCE,
                                Commitments.eventType(result),
                                information,
                                null));
    }

    private static Status status(Faults.Operation<DimseRSP> operation) throws IOException {
        return Faults.translated(
                () -> {
                    DimseRSP response = operation.run();
                    response.next();
                    return Commands.status(response.getCommand());
                });
    }

    @Override
    public void release() throws IOException {
        if (association.isReadyForDataTransfer()) {
            Faults.translated(
                    () -> {
                        association.release();
                        association.waitForSocketClose();
                        return null;
                    });
        }
        node.close();
    }

    @Override
    public void abort() {
        association.abort();
        node.close();
    }

    @Override
    public void close() {
        try {
            release();
        } catch (IOException gone) {
            node.close();
        }
    }
}

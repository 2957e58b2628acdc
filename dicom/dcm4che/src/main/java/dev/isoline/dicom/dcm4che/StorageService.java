package dev.isoline.dicom.dcm4che;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.Uid;
import dev.isoline.dicom.spi.SopReference;
import dev.isoline.dicom.spi.Status;
import dev.isoline.dicom.spi.StorageProvider;
import dev.isoline.dicom.spi.StoreRequest;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.dcm4che3.data.Attributes;
import org.dcm4che3.data.Tag;
import org.dcm4che3.data.UID;
import org.dcm4che3.data.VR;
import org.dcm4che3.io.DicomOutputStream;
import org.dcm4che3.net.Association;
import org.dcm4che3.net.Dimse;
import org.dcm4che3.net.DimseRQHandler;
import org.dcm4che3.net.PDVInputStream;
import org.dcm4che3.net.pdu.PresentationContext;

/** C-STORE as SCP, PS3.7 9.1.1: the object goes to disk as it arrives. */
final class StorageService implements DimseRQHandler {

    private final StorageProvider provider;

    StorageService(StorageProvider provider) {
        this.provider = provider;
    }

    @Override
    public void onDimseRQ(
            Association association,
            PresentationContext context,
            Dimse dimse,
            Attributes command,
            PDVInputStream data)
            throws IOException {
        Status status =
                dimse == Dimse.C_STORE_RQ
                        ? receive(association, context, command, data)
                        : Status.UNRECOGNIZED_OPERATION;
        association.writeDimseRSP(
                context,
                Commands.with(
                        org.dcm4che3.net.Commands.mkRSP(command, status.code(), dimse), status));
    }

    private Status receive(
            Association association,
            PresentationContext context,
            Attributes command,
            PDVInputStream data)
            throws IOException {
        var instance =
                new SopReference(
                        command.getString(Tag.AffectedSOPClassUID),
                        command.getString(Tag.AffectedSOPInstanceUID, ""));
        if (!Uid.isValid(instance.sopInstance())) {
            return Status.INVALID_INSTANCE.because("no SOP Instance UID");
        }
        var request =
                new StoreRequest(
                        Peers.of(association),
                        instance,
                        TransferSyntax.of(context.getTransferSyntax()));
        var place = new Path[1];
        Status ready =
                Commands.answer(
                        () -> {
                            place[0] = provider.file(request);
                            return Status.SUCCESS;
                        },
                        Status.OUT_OF_RESOURCES);
        return ready.isSuccess() ? store(association, request, place[0], data) : ready;
    }

    private Status store(
            Association association, StoreRequest request, Path file, PDVInputStream data)
            throws IOException {
        OutputStream created;
        try {
            created = Files.newOutputStream(file, StandardOpenOption.CREATE_NEW);
        } catch (IOException e) { // nor is what stands there ours to remove
            provider.failed(request, e);
            return Status.OUT_OF_RESOURCES.because("the object cannot be written");
        }
        try {
            write(association, request, created, data);
            return read(request, file);
        } catch (DicomException e) {
            return failed(request, file, e, Status.CANNOT_UNDERSTAND.because(e.getMessage()));
        } catch (IOException e) {
            if (association.isReadyForDataTransfer()) {
                return failed(request, file, e, Status.OUT_OF_RESOURCES);
            }
            failed(request, file, e, Status.PROCESSING_FAILURE);
            throw e;
        }
    }

    private static void write(
            Association association, StoreRequest request, OutputStream file, PDVInputStream data)
            throws IOException {
        SopReference instance = request.instance();
        Attributes meta =
                association.createFileMetaInformation(
                        instance.sopInstance(),
                        instance.sopClass(),
                        request.transferSyntax().uid());
        meta.setString(Tag.ImplementationClassUID, VR.UI, Part10.IMPLEMENTATION_CLASS);
        meta.setString(Tag.ImplementationVersionName, VR.SH, Part10.IMPLEMENTATION_VERSION);
        try (var out =
                new DicomOutputStream(new BufferedOutputStream(file), UID.ExplicitVRLittleEndian)) {
            out.writeFileMetaInformation(meta);
            data.copyTo(out);
        }
    }

    private Status read(StoreRequest request, Path file) throws IOException {
        try (var channel = FileChannel.open(file)) {
            DataSet head = Part10.read(channel, ReadLimits.DEFAULT).dataSet();
            return Commands.answer(
                    () -> provider.stored(request, file, head), Status.PROCESSING_FAILURE);
        }
    }

    private Status failed(StoreRequest request, Path file, IOException cause, Status status)
            throws IOException {
        Files.deleteIfExists(file);
        provider.failed(request, cause);
        return status;
    }

    @Override
    public void onClose(Association association) {
        // an object on its way has failed in receive
    }
}

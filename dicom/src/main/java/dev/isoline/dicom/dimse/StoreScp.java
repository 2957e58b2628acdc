package dev.isoline.dicom.dimse;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Uid;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.SopReference;
import dev.isoline.dicom.spi.Status;
import dev.isoline.dicom.spi.StorageProvider;
import dev.isoline.dicom.spi.StoreRequest;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** C-STORE as SCP, PS3.7 9.1.1 and PS3.4 B.2: the object goes to disk as it arrives. */
final class StoreScp {

    private final Messages messages;
    private final Peer peer;

    StoreScp(Messages messages, Peer peer) {
        this.messages = messages;
        this.peer = peer;
    }

    /** A failure is told before the rest of the object is read over, PS3.7 9.1.1.2. */
    void receive(Message message, StorageProvider provider) throws IOException {
        SopReference instance = message.command().subject();
        var request = new StoreRequest(peer, instance, messages.syntax(message.contextId()));
        if (!Uid.isValid(instance.sopInstance())) {
            respond(message, Status.INVALID_INSTANCE.because("no SOP Instance UID"));
            return;
        }
        var file = new Place();
        Status place = Answer.of(() -> file.of(provider, request), Status.OUT_OF_RESOURCES);
        respond(message, place.isSuccess() ? stored(file.path, request, provider) : place);
    }

    /** Holds the path a provider gives beside the status of its giving. */
    private static final class Place {

        private Path path;

        Status of(StorageProvider provider, StoreRequest request) throws IOException {
            path = provider.file(request);
            return Status.SUCCESS;
        }
    }

    private Status stored(Path file, StoreRequest request, StorageProvider provider)
            throws IOException {
        FileSink sink;
        try {
            sink = FileSink.create(file);
        } catch (IOException e) { // nor is what stands there ours to remove
            provider.failed(request, e);
            return Status.OUT_OF_RESOURCES.because("the object cannot be written");
        }
        try {
            receive(sink, request);
        } catch (IOException lost) {
            failed(file, request, provider, lost, Status.PROCESSING_FAILURE);
            throw lost;
        }
        Optional<IOException> failure = sink.failure();
        return failure.isPresent()
                ? failed(file, request, provider, failure.get(), Status.OUT_OF_RESOURCES)
                : read(file, request, provider);
    }

    /** What goes wrong with the association is thrown; what goes wrong with the file, kept. */
    private void receive(FileSink sink, StoreRequest request) throws IOException {
        try (sink) {
            sink.write(FileMeta.of(request).encode());
            messages.dataSet(sink);
        }
    }

    private Status read(Path file, StoreRequest request, StorageProvider provider)
            throws IOException {
        try (var channel = FileChannel.open(file)) {
            DataSet head = Part10.read(channel, ReadLimits.DEFAULT).dataSet();
            return Answer.of(() -> provider.stored(request, file, head), Status.PROCESSING_FAILURE);
        } catch (DicomException e) {
            Status status = Status.CANNOT_UNDERSTAND.because(e.getMessage());
            return failed(file, request, provider, e, status);
        } catch (IOException e) {
            return failed(file, request, provider, e, Status.OUT_OF_RESOURCES);
        }
    }

    private static Status failed(
            Path file, StoreRequest request, StorageProvider provider, IOException e, Status status)
            throws IOException {
        Files.deleteIfExists(file);
        provider.failed(request, e);
        return status;
    }

    private void respond(Message message, Status status) throws IOException {
        messages.send(message.contextId(), message.command().response(status));
    }
}

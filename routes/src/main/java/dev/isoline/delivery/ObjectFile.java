package dev.isoline.delivery;

import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Tag;
import dev.isoline.ledger.DeliveryTable.NewDelivery;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * A DICOM object to deliver, as it lies in the data folder.
 *
 * @param sopClass Media Storage SOP Class UID (0002,0002)
 * @param sopInstance Media Storage SOP Instance UID (0002,0003)
 */
record ObjectFile(Path path, String sopClass, String sopInstance) {

    /** The file a delivery names; empty when it names none, or none in the data folder. */
    static Optional<Path> path(NewDelivery delivery, Path dataDir) {
        if (delivery.path() == null) {
            return Optional.empty();
        }
        Path root = dataDir.normalize();
        Path file = root.resolve(delivery.path()).normalize();
        return Optional.of(file).filter(f -> f.startsWith(root) && Files.isRegularFile(f));
    }

    /** Sends one object. */
    @FunctionalInterface
    interface Sending {
        Verdict send(ObjectFile object) throws IOException, InterruptedException;
    }

    /** Hands the object of a delivery to {@code sending}; one that cannot be read never leaves. */
    static Verdict send(NewDelivery delivery, Path dataDir, Sending sending)
            throws IOException, InterruptedException {
        Optional<Path> file = path(delivery, dataDir);
        if (file.isEmpty()) {
            return Verdict.refused("the object to deliver is not in the data folder");
        }
        try {
            return sending.send(read(file.get()));
        } catch (DicomException e) {
            return Verdict.refused("the object is damaged: " + e.getMessage());
        }
    }

    /**
     * @throws DicomException when it is no DICOM file
     */
    static ObjectFile read(Path path) throws IOException {
        try (var file = FileChannel.open(path)) {
            var meta = Part10.read(file, ReadLimits.DEFAULT).meta();
            return new ObjectFile(
                    path,
                    meta.text(Tag.MediaStorageSOPClassUID).orElse(""),
                    meta.text(Tag.MediaStorageSOPInstanceUID).orElse(""));
        }
    }
}

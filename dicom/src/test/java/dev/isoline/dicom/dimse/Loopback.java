package dev.isoline.dicom.dimse;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.FileBulk;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.Uid;
import dev.isoline.dicom.Vr;
import dev.isoline.dicom.spi.AeTitle;
import dev.isoline.dicom.spi.DicomEngine;
import dev.isoline.dicom.spi.Listener;
import dev.isoline.dicom.spi.Local;
import dev.isoline.dicom.spi.Remote;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.SopReference;
import dev.isoline.dicom.spi.Status;
import dev.isoline.dicom.spi.StorageProvider;
import dev.isoline.dicom.spi.StoreRequest;
import dev.isoline.dicom.spi.Timeouts;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;

/** Both sides of an association in one process. */
public final class Loopback {

    public static final String AMBULATORY_ECG = "1.2.840.10008.5.1.4.1.1.9.1.3";
    public static final AeTitle ARCHIVE = new AeTitle("TERN ARCHIVE");
    public static final AeTitle RECORDER = new AeTitle("REC1");
    public static final Timeouts QUICK = Timeouts.seconds(5, 5, 5, 10, 10, 5);
    public static final DicomEngine ENGINE = DicomEngine.find();

    private Loopback() {}

    public static Local local() {
        return Local.of(ARCHIVE, "127.0.0.1", 0).with(QUICK);
    }

    public static Remote remote(Listener listener) {
        return Remote.of("127.0.0.1", listener.address().getPort(), ARCHIVE, RECORDER).with(QUICK);
    }

    /** Listens for C-ECHO and C-STORE. */
    public static Listener storing(Local local, StorageProvider provider) throws IOException {
        return ENGINE.listen(
                local, Services.echoing().storing(java.util.List.of(AMBULATORY_ECG), provider));
    }

    /** An object with so many bytes of samples, read from a file of zeros. */
    public static DataSet object(Path folder, long bytes) throws IOException {
        Path samples = folder.resolve("samples-" + bytes);
        try (var file = new java.io.RandomAccessFile(samples.toFile(), "rw")) {
            file.setLength(bytes);
        }
        return head(Uid.of("object", "" + bytes))
                .putBulk(
                        Tag.WaveformData, Vr.OW, new FileBulk(FileChannel.open(samples), 0, bytes));
    }

    public static DataSet head(String instance) throws DicomException {
        return new DataSet()
                .putText(Tag.SOPClassUID, AMBULATORY_ECG)
                .putText(Tag.SOPInstanceUID, instance)
                .putText(Tag.PatientID, "4711")
                .putText(Tag.StudyInstanceUID, Uid.of("study"))
                .putText(Tag.SeriesInstanceUID, Uid.of("series"))
                .putText(Tag.Modality, "ECG");
    }

    /** Bytes of the data set behind group 0002, by its group length. */
    public static int encodedLength(byte[] file) {
        var bytes = java.nio.ByteBuffer.wrap(file).order(java.nio.ByteOrder.LITTLE_ENDIAN);
        return file.length - 144 - bytes.getInt(140);
    }

    /** Keeps what arrives under its instance UID. */
    public static final class Folder implements StorageProvider {

        private final Path folder;
        public final BlockingQueue<SopReference> stored = new LinkedBlockingQueue<>();
        public final BlockingQueue<IOException> failures = new LinkedBlockingQueue<>();
        public volatile Status answer = Status.SUCCESS;

        public Folder(Path folder) throws IOException {
            this.folder = Files.createDirectories(folder);
        }

        public Path of(String instance) {
            return folder.resolve(instance + ".dcm");
        }

        @Override
        public Path file(StoreRequest request) {
            return of(request.instance().sopInstance());
        }

        @Override
        public Status stored(StoreRequest request, Path file, DataSet head) {
            stored.add(request.instance());
            return answer;
        }

        @Override
        public void failed(StoreRequest request, IOException cause) {
            failures.add(cause);
        }
    }
}

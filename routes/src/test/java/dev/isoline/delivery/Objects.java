package dev.isoline.delivery;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.Vr;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;

/** Small waveform objects to deliver: what a receiver needs to file one, and bytes. */
final class Objects {

    static final String AMBULATORY_ECG = "1.2.840.10008.5.1.4.1.1.9.1.3";

    private Objects() {}

    /** The bytes of the file. */
    static byte[] write(Path file, String uid, int waveformBytes) throws IOException {
        return writeOf("2.999.1", file, uid, waveformBytes);
    }

    static byte[] writeOf(String study, Path file, String uid, int waveformBytes)
            throws IOException {
        var dataSet =
                new DataSet()
                        .putText(Tag.SOPClassUID, AMBULATORY_ECG)
                        .putText(Tag.SOPInstanceUID, uid)
                        .putText(Tag.Modality, "ECG")
                        .putText(Tag.PatientID, "QMR1")
                        .putText(Tag.PatientName, "Quillfeather^Ottoline")
                        .putText(Tag.StudyInstanceUID, study)
                        .putText(Tag.SeriesInstanceUID, "2.999.2")
                        .putItems(Tag.WaveformSequence, List.of(waveform(waveformBytes)));
        try (var channel =
                FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            Part10.write(channel, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN, dataSet);
        }
        return Files.readAllBytes(file);
    }

    private static DataSet waveform(int bytes) {
        return new DataSet().putBytes(Tag.WaveformData, Vr.OW, new byte[bytes]);
    }
}

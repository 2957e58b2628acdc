package dev.isoline.dicom.dcm4che;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DataSetReader;
import dev.isoline.dicom.DataSetWriter;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.TransferSyntax;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import org.dcm4che3.data.Attributes;
import org.dcm4che3.data.UID;
import org.dcm4che3.io.DicomInputStream;
import org.dcm4che3.io.DicomOutputStream;
import org.dcm4che3.net.PDVInputStream;

/** Data sets small enough to be held, from one model to the other by their encoding. */
final class DataSets {

    private static final TransferSyntax SYNTAX = TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
    private static final ReadLimits LIMITS = new ReadLimits(32, 400_000, 16 << 20, 32 << 20);

    private DataSets() {}

    static Attributes attributes(DataSet dataSet) throws IOException {
        var bytes = new ByteArrayOutputStream();
        write(bytes, dataSet, SYNTAX);
        try (var in =
                new DicomInputStream(new ByteArrayInputStream(bytes.toByteArray()), SYNTAX.uid())) {
            return in.readDataset();
        }
    }

    static DataSet dataSet(Attributes attributes) throws IOException {
        var bytes = new ByteArrayOutputStream();
        try (var out = new DicomOutputStream(bytes, UID.ExplicitVRLittleEndian)) {
            out.writeDataset(null, attributes);
        }
        return DataSetReader.read(bytes.toByteArray(), SYNTAX, LIMITS);
    }

    /** What arrives with a request. */
    static DataSet read(PDVInputStream data, String transferSyntax) throws IOException {
        var bytes = new ByteArrayOutputStream();
        data.copyTo(bytes);
        return DataSetReader.read(bytes.toByteArray(), TransferSyntax.of(transferSyntax), LIMITS);
    }

    /** Streams it, long values included; the stream stays open. */
    static void write(OutputStream out, DataSet dataSet, TransferSyntax syntax) throws IOException {
        new DataSetWriter(Channels.newChannel(out), syntax).write(dataSet);
    }
}

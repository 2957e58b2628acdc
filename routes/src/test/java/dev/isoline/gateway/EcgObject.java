package dev.isoline.gateway;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.Vr;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;

/**
 * An Ambulatory ECG object as a recorder station makes one: one lead of 60 beats a minute.
 *
 * @param uid SOP Instance UID
 * @param patientId of whom the station believes it to be
 * @param accession number of the order
 * @param study Study Instance UID; that of the series begins with it
 * @param number Instance Number, and the day of the recording
 */
record EcgObject(String uid, String patientId, String accession, String study, int number) {

    static final String AMBULATORY_ECG = "1.2.840.10008.5.1.4.1.1.9.1.3";
    private static final int HZ = 200;
    private static final int SECONDS = 60;

    /** The only object of its study. */
    EcgObject(String uid, String patientId, String accession) {
        this(uid, patientId, accession, uid + ".1", 1);
    }

    Path write(Path folder, TransferSyntax syntax) throws IOException {
        Path file = folder.resolve(uid + "-" + patientId + "-" + syntax.ordinal() + ".dcm");
        try (var channel =
                FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            Part10.write(channel, syntax, dataSet());
        }
        return file;
    }

    private DataSet dataSet() throws IOException {
        return new DataSet()
                .putText(Tag.SOPClassUID, AMBULATORY_ECG)
                .putText(Tag.SOPInstanceUID, uid)
                .putText(Tag.ContentDate, "2026110" + (3 + number))
                .putText(Tag.ContentTime, "140000")
                .putText(Tag.AcquisitionDateTime, "2026110" + (3 + number) + "140000+0500")
                .putText(Tag.AccessionNumber, accession)
                .putText(Tag.Modality, "ECG")
                .putText(Tag.Manufacturer, "Tern Street")
                .putText(Tag.PatientName, "Quillfeather^Ottoline")
                .putText(Tag.PatientID, patientId)
                .putText(Tag.PatientBirthDate, "19590713")
                .putText(Tag.PatientSex, "F")
                .putText(Tag.StudyInstanceUID, study)
                .putText(Tag.SeriesInstanceUID, study + ".2")
                .putInts(Tag.InstanceNumber, number)
                .putItems(Tag.WaveformSequence, List.of(group()));
    }

    private static DataSet group() throws IOException {
        return new DataSet()
                .putText(Tag.WaveformOriginality, "ORIGINAL")
                .putInts(Tag.NumberOfWaveformChannels, 1)
                .putInts(Tag.NumberOfWaveformSamples, HZ * SECONDS)
                .putNumbers(Tag.SamplingFrequency, HZ)
                .putItems(Tag.ChannelDefinitionSequence, List.of(channel()))
                .putInts(Tag.WaveformBitsAllocated, 16)
                .putText(Tag.WaveformSampleInterpretation, "SS")
                .putBytes(Tag.WaveformData, Vr.OW, samples());
    }

    private static DataSet channel() throws IOException {
        var unit =
                new DataSet()
                        .putText(Tag.CodeValue, "uV")
                        .putText(Tag.CodingSchemeDesignator, "UCUM")
                        .putText(Tag.CodeMeaning, "microvolt");
        var source =
                new DataSet()
                        .putText(Tag.CodeValue, "2:2")
                        .putText(Tag.CodingSchemeDesignator, "MDC")
                        .putText(Tag.CodeMeaning, "Lead II");
        return new DataSet()
                .putText(Tag.ChannelLabel, "II")
                .putItems(Tag.ChannelSourceSequence, List.of(source))
                .putNumbers(Tag.ChannelSensitivity, 1)
                .putItems(Tag.ChannelSensitivityUnitsSequence, List.of(unit))
                .putNumbers(Tag.ChannelSensitivityCorrectionFactor, 1)
                .putNumbers(Tag.ChannelBaseline, 0)
                .putNumbers(Tag.ChannelSampleSkew, 0)
                .putInts(Tag.WaveformBitsStored, 16);
    }

    private static byte[] samples() {
        var bytes = ByteBuffer.allocate(2 * HZ * SECONDS).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < HZ * SECONDS; i++) {
            bytes.putShort((short) Edf.sample(i % HZ));
        }
        return bytes.array();
    }
}

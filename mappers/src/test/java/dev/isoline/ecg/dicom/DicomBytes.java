package dev.isoline.ecg.dicom;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.Vr;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.Channels;
import java.util.ArrayList;
import java.util.List;

/** ECG objects with the attributes of PS3.3 C.10.9 that a reader needs. */
public final class DicomBytes {

    /** One channel: name, sensitivity, its unit, correction factor and baseline. */
    public record Channel(
            String label, double sensitivity, String unit, double factor, double baseline) {}

    private final List<DataSet> groups = new ArrayList<>();

    public DicomBytes group(int hz, List<Channel> channels, int... interleaved) throws IOException {
        return group("ORIGINAL", 0, hz, channels, interleaved);
    }

    public DicomBytes group(
            String originality, double offset, int hz, List<Channel> channels, int... interleaved)
            throws IOException {
        var definitions = new ArrayList<DataSet>();
        for (Channel channel : channels) {
            definitions.add(definition(channel));
        }
        var samples = ByteBuffer.allocate(2 * interleaved.length).order(ByteOrder.LITTLE_ENDIAN);
        for (int sample : interleaved) {
            samples.putShort((short) sample);
        }
        groups.add(
                new DataSet()
                        .putNumbers(Tag.MultiplexGroupTimeOffset, offset)
                        .putText(Tag.WaveformOriginality, originality)
                        .putInts(Tag.NumberOfWaveformChannels, channels.size())
                        .putInts(Tag.NumberOfWaveformSamples, interleaved.length / channels.size())
                        .putNumbers(Tag.SamplingFrequency, hz)
                        .putItems(Tag.ChannelDefinitionSequence, definitions)
                        .putInts(Tag.WaveformBitsAllocated, 16)
                        .putText(Tag.WaveformSampleInterpretation, "SS")
                        .putBytes(Tag.WaveformPaddingValue, Vr.OW, new byte[] {0, (byte) 0x80})
                        .putBytes(Tag.WaveformData, Vr.OW, samples.array()));
        return this;
    }

    private static DataSet definition(Channel channel) throws IOException {
        var unit =
                new DataSet()
                        .putText(Tag.CodeValue, channel.unit())
                        .putText(Tag.CodingSchemeDesignator, "UCUM")
                        .putText(Tag.CodeMeaning, channel.unit());
        return new DataSet()
                .putText(Tag.ChannelLabel, channel.label())
                .putNumbers(Tag.ChannelSensitivity, channel.sensitivity())
                .putItems(Tag.ChannelSensitivityUnitsSequence, List.of(unit))
                .putNumbers(Tag.ChannelSensitivityCorrectionFactor, channel.factor())
                .putNumbers(Tag.ChannelBaseline, channel.baseline())
                .putInts(Tag.WaveformBitsStored, 16);
    }

    public byte[] file() throws IOException {
        var object =
                new DataSet()
                        .putText(Tag.SOPClassUID, "1.2.840.10008.5.1.4.1.1.9.1.2")
                        .putText(Tag.SOPInstanceUID, "2.999.1")
                        .putText(Tag.AcquisitionDateTime, "20261024093015")
                        .putText(Tag.PatientName, "Quill^Ada")
                        .putText(Tag.PatientID, "P-17")
                        .putItems(Tag.WaveformSequence, groups);
        var bytes = new ByteArrayOutputStream();
        Part10.write(Channels.newChannel(bytes), TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN, object);
        return bytes.toByteArray();
    }
}

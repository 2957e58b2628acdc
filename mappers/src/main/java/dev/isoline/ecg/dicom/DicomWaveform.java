package dev.isoline.ecg.dicom;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Element;
import dev.isoline.dicom.FileBulk;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.Value;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.Microvolts;
import dev.isoline.ecg.RecordingException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.SeekableByteChannel;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * One multiplex group, PS3.3 C.10.9.
 *
 * @param samples per channel
 * @param offset of its Waveform Data (5400,1010) in the file
 * @param padding what stands where no sample was taken
 */
record DicomWaveform(
        List<Lead> leads,
        double hz,
        long samples,
        DicomSample coding,
        OptionalInt padding,
        long offset) {

    int frameBytes() {
        return leads.size() * coding.bytes();
    }

    /** The first group of an object; the others are named in the notes. */
    static DicomWaveform of(DataSet object, SeekableByteChannel file, List<String> notes)
            throws DicomException, RecordingException {
        List<DataSet> groups = object.items(Tag.WaveformSequence);
        if (groups.isEmpty()) {
            throw new RecordingException("The DICOM object holds no waveform.");
        }
        if (groups.size() > 1) {
            notes.add("Of " + groups.size() + " multiplex groups the first was read.");
        }
        return of(groups.get(0), file);
    }

    private static DicomWaveform of(DataSet group, SeekableByteChannel file)
            throws DicomException, RecordingException {
        var coding =
                DicomSample.of(
                        required(group, Tag.WaveformBitsAllocated),
                        group.text(Tag.WaveformSampleInterpretation).orElse(""));
        var waveform =
                new DicomWaveform(
                        leads(group),
                        group.number(Tag.SamplingFrequency).orElse(0.0),
                        required(group, Tag.NumberOfWaveformSamples),
                        coding,
                        padding(group, coding),
                        data(group, file).offset());
        waveform.check(required(group, Tag.NumberOfWaveformChannels), data(group, file).length());
        return waveform;
    }

    private void check(long channels, long bytes) throws RecordingException {
        if (channels != leads.size() || leads.isEmpty()) {
            throw new RecordingException(
                    "The DICOM object defines " + leads.size() + " of " + channels + " channels.");
        }
        if (!(hz > 0)) {
            throw new RecordingException("The DICOM object gives no sampling frequency.");
        }
        if (samples * frameBytes() > bytes) {
            throw new RecordingException(
                    "The waveform data of the DICOM object are shorter than its sample count says.");
        }
    }

    /** Where they lie: values of this length were left in the file. */
    private static FileBulk data(DataSet group, SeekableByteChannel file)
            throws RecordingException {
        Element data =
                group.element(Tag.WaveformData)
                        .orElseThrow(
                                () -> new RecordingException("The DICOM object has no samples."));
        if (data.value() instanceof Value.Bulk bulk && bulk.bulk() instanceof FileBulk left) {
            return left;
        }
        throw new RecordingException("The DICOM object holds hardly any samples.");
    }

    private static OptionalInt padding(DataSet group, DicomSample coding) throws DicomException {
        byte[] value = group.bytes(Tag.WaveformPaddingValue);
        return value.length < coding.bytes()
                ? OptionalInt.empty()
                : OptionalInt.of(
                        coding.next(
                                ByteBuffer.wrap(value).order(ByteOrder.LITTLE_ENDIAN),
                                OptionalInt.empty()));
    }

    private static List<Lead> leads(DataSet group) throws DicomException {
        var leads = new ArrayList<Lead>();
        for (DataSet channel : group.items(Tag.ChannelDefinitionSequence)) {
            leads.add(lead(channel, leads.size() + 1));
        }
        return leads;
    }

    private static Lead lead(DataSet channel, int number) throws DicomException {
        double unit = microvolts(channel);
        double sensitivity =
                channel.number(Tag.ChannelSensitivity).orElse(0.0)
                        * channel.number(Tag.ChannelSensitivityCorrectionFactor).orElse(1.0);
        return new Lead(
                label(channel, number),
                sensitivity * unit,
                channel.number(Tag.ChannelBaseline).orElse(0.0) * unit,
                channel.integer(Tag.WaveformBitsStored).orElse(16L).intValue());
    }

    /** Channel Label, else the meaning of the lead's code. */
    private static String label(DataSet channel, int number) throws DicomException {
        var label = channel.text(Tag.ChannelLabel);
        var source = channel.item(Tag.ChannelSourceSequence);
        if (label.isEmpty() && source.isPresent()) {
            label = source.get().text(Tag.CodeMeaning);
        }
        return label.orElse("CH" + number);
    }

    /** UCUM; 0 where the unit is no voltage: the lead is then not calibrated. */
    private static double microvolts(DataSet channel) throws DicomException {
        var unit = channel.item(Tag.ChannelSensitivityUnitsSequence);
        return unit.isEmpty()
                ? 0
                : Microvolts.per(unit.get().text(Tag.CodeValue).orElse("")).orElse(0);
    }

    private static long required(DataSet group, int tag) throws DicomException, RecordingException {
        return group.integer(tag)
                .orElseThrow(
                        () ->
                                new RecordingException(
                                        "The DICOM object lacks " + Tag.format(tag) + "."));
    }
}

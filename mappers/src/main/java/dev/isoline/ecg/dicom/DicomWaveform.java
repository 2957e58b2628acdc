package dev.isoline.ecg.dicom;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Element;
import dev.isoline.dicom.FileBulk;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.Value;
import dev.isoline.ecg.Faults;
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
 * @param number of the group, counted from 1
 * @param samples per channel
 * @param offset of its Waveform Data (5400,1010) in the file
 * @param padding what stands where no sample was taken
 */
record DicomWaveform(
        int number,
        List<Lead> leads,
        double hz,
        long samples,
        DicomSample coding,
        OptionalInt padding,
        long offset) {

    private static final double FASTEST_HZ = 100_000;

    int frameBytes() {
        return leads.size() * coding.bytes();
    }

    /**
     * The groups of an object that were recorded together: the first original one, and those of its
     * time, rate and length. The others, such as averaged beats, are named in the notes.
     */
    static List<DicomWaveform> of(DataSet object, SeekableByteChannel file, Faults faults)
            throws DicomException, RecordingException {
        List<DataSet> groups = object.items(Tag.WaveformSequence);
        if (groups.isEmpty()) {
            throw new RecordingException("The DICOM object holds no waveform.");
        }
        int first = firstOriginal(groups);
        var together = new ArrayList<DicomWaveform>();
        together.add(of(groups.get(first), first + 1, file, faults));
        for (int i = 0; i < groups.size(); i++) {
            if (i != first && isWith(groups.get(i), groups.get(first))) {
                together.add(of(groups.get(i), i + 1, file, faults));
            } else if (i != first) {
                faults.note(
                        "Multiplex group "
                                + (i + 1)
                                + " of "
                                + groups.size()
                                + " is derived or of another time than the first and was left"
                                + " out.");
            }
        }
        return together;
    }

    private static int firstOriginal(List<DataSet> groups) throws DicomException {
        for (int i = 0; i < groups.size(); i++) {
            if (isOriginal(groups.get(i))) {
                return i;
            }
        }
        return 0;
    }

    private static boolean isOriginal(DataSet group) throws DicomException {
        return group.text(Tag.WaveformOriginality).orElse("").equals("ORIGINAL");
    }

    private static boolean isWith(DataSet group, DataSet first) throws DicomException {
        return isOriginal(group) == isOriginal(first)
                && group.number(Tag.SamplingFrequency).equals(first.number(Tag.SamplingFrequency))
                && group.number(Tag.MultiplexGroupTimeOffset)
                        .orElse(0.0)
                        .equals(first.number(Tag.MultiplexGroupTimeOffset).orElse(0.0))
                && group.integer(Tag.NumberOfWaveformSamples)
                        .equals(first.integer(Tag.NumberOfWaveformSamples));
    }

    private static DicomWaveform of(
            DataSet group, int number, SeekableByteChannel file, Faults faults)
            throws DicomException, RecordingException {
        var coding =
                DicomSample.of(
                        required(group, Tag.WaveformBitsAllocated),
                        group.text(Tag.WaveformSampleInterpretation).orElse(""));
        var leads = leads(group);
        checkChannels(required(group, Tag.NumberOfWaveformChannels), leads.size());
        long samples =
                samples(
                        required(group, Tag.NumberOfWaveformSamples),
                        data(group, file).length(),
                        leads.size() * coding.bytes(),
                        faults);
        double hz = group.number(Tag.SamplingFrequency).orElse(0.0);
        if (!(hz > 0 && hz <= FASTEST_HZ)) {
            throw new RecordingException(
                    "The DICOM object gives no sampling frequency an ECG is recorded with.");
        }
        return new DicomWaveform(
                number,
                leads,
                hz,
                samples,
                coding,
                padding(group, coding),
                data(group, file).offset());
    }

    private static void checkChannels(long channels, int defined) throws RecordingException {
        if (channels != defined || defined == 0) {
            throw new RecordingException(
                    "The DICOM object defines " + defined + " of " + channels + " channels.");
        }
    }

    private static long samples(long announced, long bytes, int frameBytes, Faults faults)
            throws RecordingException {
        long missing = announced * frameBytes - bytes;
        if (missing > 0) {
            faults.found(
                    "The waveform data of the DICOM object are shorter than its sample count says:"
                            + " "
                            + missing
                            + " bytes are missing.");
        }
        if (missing <= -frameBytes) {
            faults.note(
                    "The waveform data of the DICOM object go on after its sample count; the rest"
                            + " was left out.");
        }
        long samples = Math.min(announced, bytes / frameBytes);
        if (samples <= 0) {
            throw new RecordingException("The DICOM object has no samples.");
        }
        return samples;
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

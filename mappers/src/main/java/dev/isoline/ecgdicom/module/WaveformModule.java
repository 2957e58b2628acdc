package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.ecg.Lead;
import java.util.ArrayList;
import java.util.List;

/** Waveform Module, PS3.3 C.10.9: one multiplex group of 16-bit signed samples. */
public final class WaveformModule {

    /**
     * What stands where the recorder took no sample. Declared where the recording's format knows
     * missing samples; where it does not, this is a sample like any other.
     */
    public static final short PADDING = Short.MIN_VALUE;

    private static final byte[] PADDING_BYTES = {0, (byte) 0x80};

    private WaveformModule() {}

    public static DataSet of(WaveformObject object) {
        return new ModuleWriter("Waveform (PS3.3 C.10.9)")
                .type1(Tag.WaveformSequence, List.of(multiplexGroup(object)))
                .dataSet();
    }

    private static DataSet multiplexGroup(WaveformObject object) {
        var signal = object.signal();
        return new ModuleWriter("Waveform (PS3.3 C.10.9)")
                .type1(Tag.WaveformOriginality, "ORIGINAL")
                .type1(Tag.NumberOfWaveformChannels, signal.leads().size())
                .type1(Tag.NumberOfWaveformSamples, object.samples())
                .type1(Tag.SamplingFrequency, (double) signal.hz())
                .type1(Tag.ChannelDefinitionSequence, channels(signal.leads()))
                .type1(Tag.WaveformBitsAllocated, 16)
                .type1(Tag.WaveformSampleInterpretation, "SS")
                .type1C(signal.padded(), Tag.WaveformPaddingValue, PADDING_BYTES)
                .type1(Tag.WaveformData, object.data())
                .dataSet();
    }

    private static List<DataSet> channels(List<Lead> leads) {
        var items = new ArrayList<DataSet>();
        for (Lead lead : leads) {
            items.add(ChannelDefinition.of(items.size() + 1, lead));
        }
        return items;
    }
}

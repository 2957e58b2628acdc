package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.ecg.Lead;
import dev.isoline.ecgdicom.EcgLeadCode;
import dev.isoline.ecgdicom.OrderContext.Code;
import java.util.OptionalDouble;

/** One item of Channel Definition Sequence (003A,0200), PS3.3 C.10.9 and C.10.9.1.4. */
final class ChannelDefinition {

    private static final int LONGEST_SH = 16;
    private static final Code MICROVOLT = new Code("uV", "UCUM", "microvolt");

    private ChannelDefinition() {}

    /**
     * @param number from 1
     */
    static DataSet of(int number, Lead lead) {
        var source = EcgLeadCode.of(lead.label());
        boolean calibrated = lead.calibrated();
        return new ModuleWriter("Waveform (PS3.3 C.10.9)")
                .type3(Tag.WaveformChannelNumber, number)
                .type3(Tag.ChannelLabel, Labels.cut(lead.label(), LONGEST_SH))
                .type3(Tag.ChannelStatus, calibrated ? "" : "UNCALIBRATED")
                .type1(
                        Tag.ChannelSourceSequence,
                        CodeItems.code(new Code(source.value(), "MDC", source.meaning())))
                .type1C(calibrated, Tag.ChannelSensitivity, lead.sensitivity())
                .type1C(calibrated, Tag.ChannelSensitivityUnitsSequence, CodeItems.code(MICROVOLT))
                .type1C(calibrated, Tag.ChannelSensitivityCorrectionFactor, 1.0)
                .type1C(calibrated, Tag.ChannelBaseline, lead.baseline())
                .type1(Tag.ChannelSampleSkew, 0.0)
                // all 16 bits, because the padding value needs them
                .type1(Tag.WaveformBitsStored, 16)
                .type3(Tag.FilterLowFrequency, frequency(lead.filter().low()))
                .type3(Tag.FilterHighFrequency, frequency(lead.filter().high()))
                .type3(Tag.NotchFilterFrequency, frequency(lead.filter().notch()))
                .dataSet();
    }

    private static Object frequency(OptionalDouble hz) {
        return hz.isPresent() ? hz.getAsDouble() : "";
    }
}

package dev.isoline.dicom.waveform;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Tag;

/**
 * One channel and how its samples become a quantity, PS3.3 C.10.9.1.4.2: sample x sensitivity x
 * correction factor + baseline. The baseline is in the units, so it is not scaled; the formula with
 * it is how PS3.3's words are read by pydicom since 2026.
 *
 * @param label Channel Label (003A,0203); empty where there is none
 * @param sensitivity units of one step of the sample, Channel Sensitivity (003A,0210)
 * @param correction Channel Sensitivity Correction Factor (003A,0212)
 * @param baseline units of sample value 0, Channel Baseline (003A,0213)
 * @param units Code Value of Channel Sensitivity Units Sequence (003A,0211), such as {@code uV};
 *     empty where the samples are not calibrated, then they are their own value
 */
public record Channel(
        String label, double sensitivity, double correction, double baseline, String units) {

    static Channel of(DataSet definition) throws DicomException {
        String label = definition.text(Tag.ChannelLabel).orElse("");
        var sensitivity = definition.number(Tag.ChannelSensitivity);
        if (sensitivity.isEmpty()) {
            return new Channel(label, 1, 1, 0, "");
        }
        DataSet units =
                definition
                        .item(Tag.ChannelSensitivityUnitsSequence)
                        .orElseThrow(
                                () ->
                                        new DicomException(
                                                Tag.ChannelSensitivityUnitsSequence, "is missing"));
        return new Channel(
                label,
                sensitivity.get(),
                definition.number(Tag.ChannelSensitivityCorrectionFactor).orElse(1.0),
                definition.number(Tag.ChannelBaseline).orElse(0.0),
                units.text(Tag.CodeValue).orElse(""));
    }

    /** The quantity of a sample, in {@link #units}. */
    public double value(int sample) {
        return sample * sensitivity * correction + baseline;
    }
}

package dev.isoline.ecgdicom.iod;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.order.Problem;
import java.util.ArrayList;
import java.util.List;

/** What hangs together in an item of Channel Definition Sequence, PS3.3 C.10.9 and A.34.5.4. */
final class ChannelLimits {

    private static final List<Integer> CALIBRATION =
            List.of(
                    Tag.ChannelSensitivity,
                    Tag.ChannelSensitivityUnitsSequence,
                    Tag.ChannelSensitivityCorrectionFactor,
                    Tag.ChannelBaseline);

    private ChannelLimits() {}

    static List<Problem> check(DataSet channel) {
        var problems = new ArrayList<Problem>();
        long source =
                channel.items(Tag.ChannelSourceSequence).stream()
                        .filter(ChannelLimits::isLead)
                        .count();
        if (source != 1) {
            problems.add(
                    IodLimits.problem(
                            Tag.ChannelSourceSequence,
                            "A channel has no lead code of CID 3001 as its source."));
        }
        if (channel.hasValue(Tag.ChannelTimeSkew) == channel.hasValue(Tag.ChannelSampleSkew)) {
            problems.add(
                    IodLimits.problem(
                            Tag.ChannelSampleSkew,
                            "A channel has not exactly one of time skew and sample skew."));
        }
        long present = CALIBRATION.stream().filter(channel::hasValue).count();
        boolean uncalibrated =
                IodLimits.text(channel, Tag.ChannelStatus).equals("UNCALIBRATED") && present == 0;
        if (present != CALIBRATION.size() && !uncalibrated) {
            problems.add(
                    IodLimits.problem(
                            Tag.ChannelSensitivity,
                            "A channel has not all of sensitivity, units, correction factor and"
                                    + " baseline, nor the status UNCALIBRATED and none of them."));
        }
        return problems;
    }

    private static boolean isLead(DataSet code) {
        return IodLimits.text(code, Tag.CodingSchemeDesignator).equals("MDC")
                && IodLimits.text(code, Tag.CodeValue).startsWith("2:");
    }
}

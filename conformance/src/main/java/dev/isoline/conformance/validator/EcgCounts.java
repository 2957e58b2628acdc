package dev.isoline.conformance.validator;

import dev.isoline.dicom.Tag;
import java.util.List;

/** Counting that the rules of ECG objects need. */
final class EcgCounts {

    private EcgCounts() {}

    static long channels(Attributes object) {
        return object.items(Tag.WaveformSequence).stream()
                .mapToLong(group -> group.integer(Tag.NumberOfWaveformChannels))
                .sum();
    }

    /** That the sample interpretation asks for; 0 for one that no ECG has. */
    static long bits(Attributes group) {
        return switch (group.text(Tag.WaveformSampleInterpretation)) {
            case "SB" -> 8;
            case "SS" -> 16;
            default -> 0;
        };
    }

    static boolean isWhole(Attributes group) {
        long bytes =
                group.integer(Tag.NumberOfWaveformChannels)
                        * group.integer(Tag.NumberOfWaveformSamples)
                        * group.integer(Tag.WaveformBitsAllocated)
                        / 8;
        long length = group.length(Tag.WaveformData);
        return length == bytes || length == bytes + bytes % 2;
    }

    static boolean isCalibratedOrSaysNot(Attributes channel) {
        long present =
                channel.present(
                        Tag.ChannelSensitivity,
                        Tag.ChannelSensitivityUnitsSequence,
                        Tag.ChannelSensitivityCorrectionFactor,
                        Tag.ChannelBaseline);
        boolean says = channel.text(Tag.ChannelStatus).equals("UNCALIBRATED");
        return present == 4 || present == 0 && says;
    }

    static boolean positionsFit(Attributes item) {
        String type = item.text(Tag.TemporalRangeType);
        int positions = item.integers(Tag.ReferencedSamplePositions).size();
        boolean elsewhere = item.has(Tag.ReferencedTimeOffsets) || item.has(Tag.ReferencedDateTime);
        if (type.isEmpty() || elsewhere) {
            return positions == 0;
        }
        return switch (type) {
            case "MULTIPOINT" -> positions > 0;
            case "MULTISEGMENT" -> positions > 0 && positions % 2 == 0;
            default -> EcgRule.FIXED_POSITIONS.getOrDefault(type, 0) == positions && positions > 0;
        };
    }

    /** Groups, channels and samples are counted from 1; channel 0 is all of a group. */
    static boolean referencesAreThere(Attributes object) {
        List<Attributes> groups = object.items(Tag.WaveformSequence);
        return object.items(Tag.WaveformAnnotationSequence).stream()
                .allMatch(item -> refersTo(groups, item));
    }

    private static boolean refersTo(List<Attributes> groups, Attributes item) {
        List<Long> pairs = item.integers(Tag.ReferencedWaveformChannels);
        for (int i = 0; i + 1 < pairs.size(); i += 2) {
            long group = pairs.get(i);
            if (group < 1 || group > groups.size()) {
                return false;
            }
            Attributes referred = groups.get((int) group - 1);
            long samples = referred.integer(Tag.NumberOfWaveformSamples);
            if (pairs.get(i + 1) > referred.integer(Tag.NumberOfWaveformChannels)
                    || item.integers(Tag.ReferencedSamplePositions).stream()
                            .anyMatch(position -> position < 1 || position > samples)) {
                return false;
            }
        }
        return true;
    }
}

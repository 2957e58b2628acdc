package dev.isoline.ecgdicom.iod;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Element;
import dev.isoline.dicom.Tag;
import dev.isoline.order.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Limits of the ECG IODs that no public checker tests, PS3.3 A.34.3.4, A.34.4.4 and A.34.5.4:
 * Modality, multiplex groups, channels, sampling frequency, samples, interpretation, as much data
 * as the counts say, calibration with its units, annotations within the samples.
 */
public final class IodLimits {

    /** Bits Allocated of an interpretation, PS3.3 C.10.9.1.5. */
    private static final Map<String, Long> BITS = Map.of("SB", 8L, "SS", 16L);

    private IodLimits() {}

    /**
     * All faults of an object against the limits, located by tag; none for an object within them.
     */
    public static List<Problem> check(EcgIod iod, DataSet object) {
        var problems = new ArrayList<>(RequiredAttributes.check(object));
        if (!"ECG".equals(text(object, Tag.Modality))) {
            problems.add(problem(Tag.Modality, "Modality is not ECG."));
        }
        List<DataSet> groups = object.items(Tag.WaveformSequence);
        groups(iod, groups).ifPresent(problems::add);
        groups.forEach(group -> problems.addAll(group(iod, group)));
        problems.addAll(AnnotationLimits.check(object));
        return problems;
    }

    private static Optional<Problem> groups(EcgIod iod, List<DataSet> groups) {
        if (groups.isEmpty() || groups.size() > iod.mostGroups) {
            return Optional.of(
                    problem(
                            Tag.WaveformSequence,
                            iod.title()
                                    + " has "
                                    + upTo(iod.mostGroups)
                                    + " multiplex groups, this one has "
                                    + groups.size()
                                    + "."));
        }
        long all = groups.stream().mapToLong(g -> integer(g, Tag.NumberOfWaveformChannels)).sum();
        return iod == EcgIod.TWELVE_LEAD && groups.size() > 1
                ? channels(iod, all)
                : Optional.empty();
    }

    private static List<Problem> group(EcgIod iod, DataSet group) {
        var problems = new ArrayList<Problem>();
        long channels = integer(group, Tag.NumberOfWaveformChannels);
        channels(iod, channels).ifPresent(problems::add);
        rate(iod, number(group, Tag.SamplingFrequency)).ifPresent(problems::add);
        samples(iod, integer(group, Tag.NumberOfWaveformSamples)).ifPresent(problems::add);
        if (group.items(Tag.ChannelDefinitionSequence).size() != channels) {
            problems.add(
                    problem(
                            Tag.ChannelDefinitionSequence,
                            "Not every channel has one item of Channel Definition Sequence."));
        }
        interpretation(iod, group).ifPresent(problems::add);
        length(group).ifPresent(problems::add);
        group.items(Tag.ChannelDefinitionSequence)
                .forEach(channel -> problems.addAll(ChannelLimits.check(channel)));
        return problems;
    }

    static Optional<Problem> channels(EcgIod iod, long channels) {
        if (channels >= 1 && channels <= iod.mostChannels) {
            return Optional.empty();
        }
        return Optional.of(
                problem(
                        Tag.NumberOfWaveformChannels,
                        iod.title()
                                + " has "
                                + upTo(iod.mostChannels)
                                + " channels, this one has "
                                + channels
                                + "."));
    }

    static Optional<Problem> rate(EcgIod iod, double hz) {
        if (iod.takes(hz) && hz == Math.rint(hz)) {
            return Optional.empty();
        }
        return Optional.of(
                problem(
                        Tag.SamplingFrequency,
                        iod.title()
                                + " has a sampling frequency of "
                                + iod.lowestHz
                                + " to "
                                + iod.highestHz
                                + " Hz, written here as a whole number; this one has "
                                + hz
                                + " Hz."));
    }

    private static Optional<Problem> samples(EcgIod iod, long samples) {
        if (samples <= iod.mostSamples) {
            return Optional.empty();
        }
        return Optional.of(
                problem(
                        Tag.NumberOfWaveformSamples,
                        iod.title()
                                + " has at most "
                                + iod.mostSamples
                                + " samples a channel, this one has "
                                + samples
                                + "."));
    }

    private static String upTo(int most) {
        return most == 1 ? "1" : "1 to " + most;
    }

    private static Optional<Problem> interpretation(EcgIod iod, DataSet group) {
        String interpretation = text(group, Tag.WaveformSampleInterpretation);
        if (!iod.interpretations.contains(interpretation)) {
            return Optional.of(
                    problem(
                            Tag.WaveformSampleInterpretation,
                            "Waveform Sample Interpretation is none that "
                                    + iod.title()
                                    + " may have."));
        }
        if (BITS.get(interpretation) != integer(group, Tag.WaveformBitsAllocated)) {
            return Optional.of(
                    problem(
                            Tag.WaveformBitsAllocated,
                            "Waveform Bits Allocated does not fit Waveform Sample Interpretation."));
        }
        return Optional.empty();
    }

    private static Optional<Problem> length(DataSet group) {
        long samples = integer(group, Tag.NumberOfWaveformSamples);
        long counted =
                samples
                        * integer(group, Tag.NumberOfWaveformChannels)
                        * (integer(group, Tag.WaveformBitsAllocated) / 8);
        long length = group.element(Tag.WaveformData).map(Element::length).orElse(-1L);
        if (samples > 0 && (length == counted || length == counted + (counted & 1))) {
            return Optional.empty();
        }
        return Optional.of(
                problem(
                        Tag.WaveformData,
                        "Waveform Data has "
                                + length
                                + " bytes where channels and samples make "
                                + counted
                                + "."));
    }

    static Problem problem(int tag, String text) {
        return Problem.error(Problem.Kind.VALUE, Tag.format(tag), text);
    }

    static String text(DataSet dataSet, int tag) {
        try {
            return dataSet.text(tag).orElse("");
        } catch (DicomException unreadable) {
            return "";
        }
    }

    static long integer(DataSet dataSet, int tag) {
        try {
            return dataSet.integer(tag).orElse(0L);
        } catch (DicomException unreadable) {
            return 0;
        }
    }

    private static double number(DataSet dataSet, int tag) {
        try {
            return dataSet.number(tag).orElse(0.0);
        } catch (DicomException unreadable) {
            return 0;
        }
    }
}

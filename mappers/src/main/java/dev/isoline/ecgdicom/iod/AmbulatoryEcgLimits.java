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
 * Limits of the Ambulatory ECG IOD, PS3.3 A.34.5.4 (2020a), that no public checker tests: one
 * multiplex group, 1 to 12 channels, 50 to 1000 Hz, SB or SS, and as much data as the counts say.
 */
public final class AmbulatoryEcgLimits {

    private static final int MOST_CHANNELS = 12;
    private static final int LOWEST_HZ = 50;
    private static final int HIGHEST_HZ = 1000;

    /** Bits Allocated of the two interpretations, PS3.3 C.10.9.1.5. */
    private static final Map<String, Long> BITS = Map.of("SB", 8L, "SS", 16L);

    private AmbulatoryEcgLimits() {}

    /**
     * All faults of an object against the limits, located by tag; none for an object within them.
     */
    public static List<Problem> check(DataSet object) {
        var problems = new ArrayList<Problem>();
        if (!"ECG".equals(text(object, Tag.Modality))) {
            problems.add(problem(Tag.Modality, "Modality is not ECG."));
        }
        List<DataSet> groups = object.items(Tag.WaveformSequence);
        if (groups.size() != 1) {
            problems.add(
                    problem(
                            Tag.WaveformSequence,
                            "An Ambulatory ECG has one multiplex group, this one has "
                                    + groups.size()
                                    + "."));
        }
        groups.forEach(group -> problems.addAll(group(group)));
        return problems;
    }

    private static List<Problem> group(DataSet group) {
        var problems = new ArrayList<Problem>();
        long channels = integer(group, Tag.NumberOfWaveformChannels);
        channels(channels).ifPresent(problems::add);
        rate(number(group, Tag.SamplingFrequency)).ifPresent(problems::add);
        if (group.items(Tag.ChannelDefinitionSequence).size() != channels) {
            problems.add(
                    problem(
                            Tag.ChannelDefinitionSequence,
                            "Not every channel has one item of Channel Definition Sequence."));
        }
        interpretation(group).ifPresent(problems::add);
        length(group).ifPresent(problems::add);
        group.items(Tag.ChannelDefinitionSequence)
                .forEach(channel -> problems.addAll(ChannelLimits.check(channel)));
        return problems;
    }

    static Optional<Problem> channels(long channels) {
        if (channels >= 1 && channels <= MOST_CHANNELS) {
            return Optional.empty();
        }
        return Optional.of(
                problem(
                        Tag.NumberOfWaveformChannels,
                        "An Ambulatory ECG has 1 to 12 channels, this one has " + channels + "."));
    }

    static Optional<Problem> rate(double hz) {
        if (hz >= LOWEST_HZ && hz <= HIGHEST_HZ && hz == Math.rint(hz)) {
            return Optional.empty();
        }
        return Optional.of(
                problem(
                        Tag.SamplingFrequency,
                        "An Ambulatory ECG has a sampling frequency of 50 to 1000 Hz, written here as"
                                + " a whole number; this one has "
                                + hz
                                + " Hz."));
    }

    private static Optional<Problem> interpretation(DataSet group) {
        Long bits = BITS.get(text(group, Tag.WaveformSampleInterpretation));
        if (bits == null) {
            return Optional.of(
                    problem(
                            Tag.WaveformSampleInterpretation,
                            "Waveform Sample Interpretation of an Ambulatory ECG is SB or SS."));
        }
        if (bits != integer(group, Tag.WaveformBitsAllocated)) {
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

    private static long integer(DataSet dataSet, int tag) {
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

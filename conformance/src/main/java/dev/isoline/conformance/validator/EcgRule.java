package dev.isoline.conformance.validator;

import dev.isoline.dicom.Tag;
import java.util.Map;
import java.util.function.BiPredicate;

/**
 * What PS3.3 asks of an ECG object in numbers. dciodvfy 1.00~20220618 does not look at most of it
 * (measured), so it is asked here. Each rule is put to every part of its scope.
 */
enum EcgRule {
    // spotless:off
    MODALITY(Scope.OBJECT, Tag.Modality, "A.34.3.4.1, A.34.4.4.1, A.34.5.4.1", "Modality is ECG",
            (limits, object) -> object.text(Tag.Modality).equals("ECG")),
    GROUPS(Scope.OBJECT, Tag.WaveformSequence, "A.34.3.4.2, A.34.4.4.2, A.34.5.4.2", "the number of multiplex groups is within the IOD's limit",
            (limits, object) -> within(object.items(Tag.WaveformSequence).size(), 1, limits.groups)),
    CHANNELS_IN_ALL(Scope.OBJECT, Tag.NumberOfWaveformChannels, "A.34.3.4.4", "the channels of all groups together are within the IOD's limit",
            (limits, object) -> EcgCounts.channels(object) <= limits.total),
    CHANNELS(Scope.GROUP, Tag.NumberOfWaveformChannels, "A.34.3.4.4, A.34.4.4, A.34.5.4", "the number of channels is within the IOD's limit",
            (limits, group) -> within(group.integer(Tag.NumberOfWaveformChannels), 1, limits.channels)),
    CHANNELS_DEFINED(Scope.GROUP, Tag.ChannelDefinitionSequence, "C.10.9", "every channel has one item of Channel Definition Sequence",
            (limits, group) -> group.items(Tag.ChannelDefinitionSequence).size() == group.integer(Tag.NumberOfWaveformChannels)),
    RATE(Scope.GROUP, Tag.SamplingFrequency, "A.34.3.4, A.34.4.4, A.34.5.4", "the sampling frequency is within the IOD's limits",
            (limits, group) -> within(group.number(Tag.SamplingFrequency), limits.lowestHz, limits.highestHz)),
    SAMPLES(Scope.GROUP, Tag.NumberOfWaveformSamples, "A.34.3.4", "the number of samples a channel is within the IOD's limit",
            (limits, group) -> within(group.integer(Tag.NumberOfWaveformSamples), 1, limits.samples)),
    INTERPRETATION(Scope.GROUP, Tag.WaveformSampleInterpretation, "A.34.3.4, A.34.4.4, A.34.5.4", "the sample interpretation is one of the IOD's",
            (limits, group) -> limits.interpretations.contains(group.text(Tag.WaveformSampleInterpretation))),
    BITS(Scope.GROUP, Tag.WaveformBitsAllocated, "C.10.9.1.5", "SB has 8 and SS has 16 bits allocated",
            (limits, group) -> EcgCounts.bits(group) == group.integer(Tag.WaveformBitsAllocated)),
    DATA(Scope.GROUP, Tag.WaveformData, "C.10.9.1.7", "the data is as long as channels, samples and bits make it, made even",
            (limits, group) -> EcgCounts.isWhole(group)),
    SOURCE(Scope.CHANNEL, Tag.ChannelSourceSequence, "A.34.3.4, A.34.4.4, A.34.5.4 (CID 3001)", "the channel source is one coded lead",
            (limits, channel) -> channel.items(Tag.ChannelSourceSequence).size() == 1 && channel.items(Tag.ChannelSourceSequence).get(0).has(Tag.CodeValue)),
    SKEW(Scope.CHANNEL, Tag.ChannelSampleSkew, "C.10.9.1.4.3", "there is a time skew or a sample skew, not both",
            (limits, channel) -> channel.present(Tag.ChannelTimeSkew, Tag.ChannelSampleSkew) == 1),
    BITS_STORED(Scope.CHANNEL, Tag.WaveformBitsStored, "C.10.9", "bits are stored, at most 16 of them",
            (limits, channel) -> within(channel.integer(Tag.WaveformBitsStored), 1, 16)),
    CALIBRATION(Scope.CHANNEL, Tag.ChannelSensitivity, "C.10.9 (1C)", "sensitivity, units, correction factor and baseline stand together; without them the channel status says UNCALIBRATED",
            (limits, channel) -> EcgCounts.isCalibratedOrSaysNot(channel)),
    SUBJECT(Scope.ANNOTATION, Tag.ConceptNameCodeSequence, "C.10.10", "there is a text or a concept name, not both",
            (limits, item) -> item.present(Tag.UnformattedTextValue, Tag.ConceptNameCodeSequence) == 1),
    CHANNEL_PAIRS(Scope.ANNOTATION, Tag.ReferencedWaveformChannels, "C.10.10.1.1", "channels are referred to by pairs of group and channel",
            (limits, item) -> within(item.integers(Tag.ReferencedWaveformChannels).size(), 2, Long.MAX_VALUE) && item.integers(Tag.ReferencedWaveformChannels).size() % 2 == 0),
    POSITIONS(Scope.ANNOTATION, Tag.TemporalRangeType, "C.10.10.1.3", "the temporal range type fits the number of positions",
            (limits, item) -> EcgCounts.positionsFit(item)),
    REFERENCES(Scope.OBJECT, Tag.ReferencedSamplePositions, "C.10.10.1.1, C.10.10.1.2", "annotations refer to groups, channels and samples that are there",
            (limits, object) -> EcgCounts.referencesAreThere(object));
    // spotless:on

    /** What a rule is put to. */
    enum Scope {
        OBJECT,
        GROUP,
        CHANNEL,
        ANNOTATION
    }

    /** Temporal range types with a fixed number of positions. */
    static final Map<String, Integer> FIXED_POSITIONS =
            Map.of("POINT", 1, "BEGIN", 1, "END", 1, "SEGMENT", 2);

    final Scope scope;
    final int tag;
    final String source;
    final String says;
    final BiPredicate<EcgLimits, Attributes> holds;

    EcgRule(
            Scope scope,
            int tag,
            String source,
            String says,
            BiPredicate<EcgLimits, Attributes> holds) {
        this.scope = scope;
        this.tag = tag;
        this.source = source;
        this.says = says;
        this.holds = holds;
    }

    private static boolean within(double value, double lowest, double highest) {
        return value >= lowest && value <= highest;
    }
}

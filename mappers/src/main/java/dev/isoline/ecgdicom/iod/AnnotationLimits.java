package dev.isoline.ecgdicom.iod;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Tag;
import dev.isoline.order.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Items of Waveform Annotation Sequence against the samples they speak of, PS3.3 C.10.10. */
final class AnnotationLimits {

    private AnnotationLimits() {}

    static List<Problem> check(DataSet object) {
        var problems = new ArrayList<Problem>();
        List<DataSet> groups = object.items(Tag.WaveformSequence);
        for (DataSet item : object.items(Tag.WaveformAnnotationSequence)) {
            subject(item).ifPresent(problems::add);
            channels(item, groups).ifPresent(problems::add);
            range(item).ifPresent(problems::add);
            positions(item, groups).ifPresent(problems::add);
        }
        return problems;
    }

    private static Optional<Problem> subject(DataSet item) {
        boolean text = item.hasValue(Tag.UnformattedTextValue);
        boolean concept = item.hasValue(Tag.ConceptNameCodeSequence);
        return unless(
                text != concept,
                Tag.ConceptNameCodeSequence,
                "An annotation has not exactly one of text and concept name.");
    }

    /** Pairs of group and channel, ordinals; channel 0 is every one. */
    private static Optional<Problem> channels(DataSet item, List<DataSet> groups) {
        List<Long> pairs = integers(item, Tag.ReferencedWaveformChannels);
        boolean there = !pairs.isEmpty() && pairs.size() % 2 == 0;
        for (int i = 0; there && i < pairs.size(); i += 2) {
            long group = pairs.get(i);
            there =
                    group >= 1
                            && group <= groups.size()
                            && pairs.get(i + 1) <= channelsOf(groups.get((int) group - 1));
        }
        return unless(
                there,
                Tag.ReferencedWaveformChannels,
                "An annotation refers to a channel that is not there.");
    }

    private static long channelsOf(DataSet group) {
        return IodLimits.integer(group, Tag.NumberOfWaveformChannels);
    }

    private static Optional<Problem> range(DataSet item) {
        String range = IodLimits.text(item, Tag.TemporalRangeType);
        int positions = integers(item, Tag.ReferencedSamplePositions).size();
        boolean right =
                switch (range) {
                    case "" -> positions == 0;
                    case "POINT", "BEGIN", "END" -> positions == 1;
                    case "MULTIPOINT" -> positions > 0;
                    case "SEGMENT" -> positions == 2;
                    case "MULTISEGMENT" -> positions > 0 && positions % 2 == 0;
                    default -> false;
                };
        return unless(
                right,
                Tag.TemporalRangeType,
                "The Temporal Range Type of an annotation does not fit its positions.");
    }

    private static Optional<Problem> positions(DataSet item, List<DataSet> groups) {
        long most =
                groups.stream()
                        .mapToLong(group -> IodLimits.integer(group, Tag.NumberOfWaveformSamples))
                        .max()
                        .orElse(0);
        return unless(
                integers(item, Tag.ReferencedSamplePositions).stream()
                        .allMatch(position -> position >= 1 && position <= most),
                Tag.ReferencedSamplePositions,
                "An annotation refers to a sample that is not there.");
    }

    private static Optional<Problem> unless(boolean right, int tag, String text) {
        return right ? Optional.empty() : Optional.of(IodLimits.problem(tag, text));
    }

    private static List<Long> integers(DataSet dataSet, int tag) {
        try {
            return dataSet.ints(tag);
        } catch (DicomException unreadable) {
            return List.of();
        }
    }
}

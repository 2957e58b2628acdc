package dev.isoline.ecgdicom.iod;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Dictionary;
import dev.isoline.dicom.Tag;
import dev.isoline.order.Problem;
import java.util.ArrayList;
import java.util.List;

/**
 * Attributes of type 1 and 2 in the mandatory modules of the ECG IODs, PS3.3 C.7.1.1, C.7.2.1,
 * C.7.3.1, C.7.5.1, C.10.8, C.10.9, C.12.1; those with a limit of their own are not among them.
 */
final class RequiredAttributes {

    // spotless:off
    private static final List<Integer> TYPE_1 = List.of(
            Tag.StudyInstanceUID, Tag.Modality, Tag.SeriesInstanceUID,
            Tag.InstanceNumber, Tag.ContentDate, Tag.ContentTime, Tag.AcquisitionDateTime,
            Tag.SOPClassUID, Tag.SOPInstanceUID);

    private static final List<Integer> TYPE_2 = List.of(
            Tag.PatientName, Tag.PatientID, Tag.PatientBirthDate, Tag.PatientSex,
            Tag.StudyDate, Tag.StudyTime, Tag.ReferringPhysicianName, Tag.StudyID, Tag.AccessionNumber,
            Tag.SeriesNumber, Tag.Manufacturer);

    private static final List<Integer> TYPE_1_OF_A_GROUP = List.of(
            Tag.WaveformOriginality, Tag.NumberOfWaveformChannels, Tag.NumberOfWaveformSamples,
            Tag.SamplingFrequency, Tag.ChannelDefinitionSequence, Tag.WaveformBitsAllocated,
            Tag.WaveformSampleInterpretation, Tag.WaveformData);

    private static final List<Integer> TYPE_1_OF_A_CHANNEL = List.of(Tag.WaveformBitsStored);
    // spotless:on

    private RequiredAttributes() {}

    static List<Problem> check(DataSet object) {
        var problems = new ArrayList<Problem>();
        TYPE_2.stream()
                .filter(tag -> !object.contains(tag))
                .map(RequiredAttributes::missing)
                .forEach(problems::add);
        problems.addAll(type1(TYPE_1, object));
        for (DataSet group : object.items(Tag.WaveformSequence)) {
            problems.addAll(type1(TYPE_1_OF_A_GROUP, group));
            group.items(Tag.ChannelDefinitionSequence)
                    .forEach(channel -> problems.addAll(type1(TYPE_1_OF_A_CHANNEL, channel)));
        }
        return problems;
    }

    private static List<Problem> type1(List<Integer> tags, DataSet dataSet) {
        return tags.stream()
                .filter(tag -> !dataSet.hasValue(tag))
                .map(RequiredAttributes::missing)
                .toList();
    }

    private static Problem missing(int tag) {
        return Problem.error(
                Problem.Kind.REQUIRED,
                Tag.format(tag),
                Dictionary.name(tag).orElse("An attribute") + " is missing.");
    }
}

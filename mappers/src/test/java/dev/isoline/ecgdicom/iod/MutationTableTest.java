package dev.isoline.ecgdicom.iod;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.Vr;
import dev.isoline.ecg.Beat;
import dev.isoline.ecgdicom.Checkers;
import dev.isoline.ecgdicom.MadeFindings;
import dev.isoline.ecgdicom.MadeRecording;
import dev.isoline.ecgdicom.Orders;
import dev.isoline.ecgdicom.StripSettings;
import dev.isoline.ecgdicom.TestFolder;
import dev.isoline.order.Problem;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A good object with one fault: our own check names its tag; what dciodvfy 1.00~20220618 says of it
 * is written down beside it, so that the check that is needed is the check that is there.
 */
class MutationTableTest {

    private static final boolean BLIND = false;
    private static final boolean SEES = true;

    private interface Mutation {
        void spoil(DataSet object, DataSet group, DataSet channel, DataSet annotation)
                throws DicomException;
    }

    // spotless:off
    static Stream<Arguments> table() {
        return Stream.of(
            row("rate 20 Hz",                   "(003A,001A)", BLIND, (o, g, c, a) -> g.putText(Tag.SamplingFrequency, "20")),
            row("rate 4000 Hz",                 "(003A,001A)", BLIND, (o, g, c, a) -> g.putText(Tag.SamplingFrequency, "4000")),
            row("13 channels",                  "(003A,0005)", BLIND, (o, g, c, a) -> thirteen(g, c)),
            row("a sample more than counted",   "(5400,1010)", BLIND, (o, g, c, a) -> g.putInts(Tag.NumberOfWaveformSamples, 399)),
            row("a sample less than counted",   "(5400,1010)", BLIND, (o, g, c, a) -> g.putInts(Tag.NumberOfWaveformSamples, 401)),
            row("Modality HD",                  "(0008,0060)", BLIND, (o, g, c, a) -> o.putText(Tag.Modality, "HD")),
            row("interpretation US",            "(5400,1006)", BLIND, (o, g, c, a) -> g.putText(Tag.WaveformSampleInterpretation, "US")),
            row("8 bits for SS",                "(5400,1004)", SEES,  (o, g, c, a) -> g.putInts(Tag.WaveformBitsAllocated, 8)),
            row("no calibration, not said so",  "(003A,0210)", BLIND, (o, g, c, a) -> uncalibrate(c)),
            row("no sensitivity alone",         "(003A,0210)", SEES,  (o, g, c, a) -> c.remove(Tag.ChannelSensitivity)),
            row("no units",                     "(003A,0210)", SEES,  (o, g, c, a) -> c.remove(Tag.ChannelSensitivityUnitsSequence)),
            row("no correction factor",         "(003A,0210)", SEES,  (o, g, c, a) -> c.remove(Tag.ChannelSensitivityCorrectionFactor)),
            row("no baseline",                  "(003A,0210)", SEES,  (o, g, c, a) -> c.remove(Tag.ChannelBaseline)),
            row("no lead code",                 "(003A,0208)", SEES,  (o, g, c, a) -> c.remove(Tag.ChannelSourceSequence)),
            row("no skew",                      "(003A,0215)", SEES,  (o, g, c, a) -> c.remove(Tag.ChannelSampleSkew)),
            row("no channel count",             "(003A,0005)", SEES,  (o, g, c, a) -> g.remove(Tag.NumberOfWaveformChannels)),
            row("no samples",                   "(5400,1010)", SEES,  (o, g, c, a) -> g.remove(Tag.WaveformData)),
            row("no Waveform Sequence",         "(5400,0100)", SEES,  (o, g, c, a) -> o.remove(Tag.WaveformSequence)),
            row("no Acquisition DateTime",      "(0008,002A)", SEES,  (o, g, c, a) -> o.remove(Tag.AcquisitionDateTime)),
            row("no Manufacturer",              "(0008,0070)", SEES,  (o, g, c, a) -> o.remove(Tag.Manufacturer)),
            row("no Patient ID",                "(0010,0020)", SEES,  (o, g, c, a) -> o.remove(Tag.PatientID)),
            row("annotation of nothing",        "(0040,A043)", SEES,  (o, g, c, a) -> a.remove(Tag.ConceptNameCodeSequence)),
            row("annotation past the end",      "(0040,A132)", BLIND, (o, g, c, a) -> a.putInts(Tag.ReferencedSamplePositions, 1, 401)),
            row("annotation of sample 0",       "(0040,A132)", BLIND, (o, g, c, a) -> a.putInts(Tag.ReferencedSamplePositions, 0, 1)),
            row("annotation of channel 3",      "(0040,A0B0)", BLIND, (o, g, c, a) -> a.putInts(Tag.ReferencedWaveformChannels, 1, 3)),
            row("segment of three positions",   "(0040,A130)", BLIND, (o, g, c, a) -> segment(a)));
    }
    // spotless:on

    @TempDir Path folder;

    private static Arguments row(String fault, String location, boolean seen, Mutation mutation) {
        return Arguments.of(fault, location, seen, mutation);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("table")
    void a_fault_is_caught_by_its_tag(String fault, String location, boolean seen, Mutation by)
            throws Exception {
        DataSet object = goodObject();
        assertThat(IodLimits.check(EcgIod.AMBULATORY, object)).isEmpty();
        DataSet group = object.item(Tag.WaveformSequence).orElseThrow();
        by.spoil(
                object,
                group,
                group.items(Tag.ChannelDefinitionSequence).get(1),
                object.items(Tag.WaveformAnnotationSequence).get(1));
        assertThat(IodLimits.check(EcgIod.AMBULATORY, object))
                .extracting(Problem::location)
                .contains(location);
        assertThat(Checkers.dciodvfyErrors(written(object)).isEmpty())
                .as("dciodvfy: " + fault)
                .isEqualTo(!seen);
    }

    private DataSet goodObject() throws IOException {
        var found =
                new MadeFindings().recorded(0, 400).beat(10, Beat.Kind.N).beat(210, Beat.Kind.N);
        var written =
                RecordingToObjects.write(
                        new MadeRecording(
                                200,
                                MadeRecording.leads("II", "V5"),
                                List.of(MadeRecording.block(0, 2, 400))),
                        found.build(),
                        StripSettings.DEFAULT,
                        Orders.monitoring(),
                        Orders.LISBON,
                        new TestFolder(folder));
        try (var file =
                FileChannel.open(folder.resolve(written.get(0).sopInstanceUid() + ".dcm"))) {
            return Part10.read(file, ReadLimits.DEFAULT).dataSet();
        }
    }

    private Path written(DataSet object) throws IOException {
        Path file = folder.resolve("spoilt.dcm");
        try (var channel =
                FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            Part10.write(channel, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN, object);
        }
        return file;
    }

    private static void thirteen(DataSet group, DataSet channel) throws DicomException {
        group.putItems(
                        Tag.ChannelDefinitionSequence,
                        Stream.generate(() -> channel).limit(13).toList())
                .putInts(Tag.NumberOfWaveformChannels, 13)
                .putBytes(Tag.WaveformData, Vr.OW, new byte[400 * 13 * 2]);
    }

    private static void uncalibrate(DataSet channel) {
        channel.remove(Tag.ChannelSensitivity)
                .remove(Tag.ChannelSensitivityUnitsSequence)
                .remove(Tag.ChannelSensitivityCorrectionFactor)
                .remove(Tag.ChannelBaseline);
    }

    private static void segment(DataSet annotation) throws DicomException {
        annotation
                .putText(Tag.TemporalRangeType, "SEGMENT")
                .putInts(Tag.ReferencedSamplePositions, 1, 2, 3);
    }
}

package dev.isoline.ecgdicom.iod;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Tag;
import dev.isoline.ecg.Block;
import dev.isoline.ecg.Lead;
import dev.isoline.ecgdicom.Checkers;
import dev.isoline.ecgdicom.MadeRecording;
import dev.isoline.ecgdicom.Orders;
import dev.isoline.ecgdicom.TestFolder;
import dev.isoline.ecgdicom.WrittenObject;
import dev.isoline.order.ContentError;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** PS3.3 A.34.5: what is written is read by pydicom and liked by dciodvfy. */
class RecordingToObjectsTest {

    @TempDir Path folder;

    private List<WrittenObject> write(MadeRecording recording) throws IOException {
        return RecordingToObjects.write(
                recording, Orders.monitoring(), Orders.LISBON, new TestFolder(folder));
    }

    private Path file(WrittenObject object) {
        return folder.resolve(object.sopInstanceUid() + ".dcm");
    }

    private DataSet read(WrittenObject object) throws IOException {
        try (var channel = FileChannel.open(file(object))) {
            return Part10.read(channel, ReadLimits.DEFAULT).dataSet();
        }
    }

    private static MadeRecording threeLeads(Block... blocks) {
        var leads =
                List.of(
                        new Lead("MLII", 4.88281, 0, 16),
                        new Lead("V5", 2.5, -312.5, 12),
                        new Lead("X7", 0, 0, 12));
        return new MadeRecording(200, leads, List.of(blocks));
    }

    @Test
    void dciodvfy_finds_no_error() throws Exception {
        var objects = write(threeLeads(MadeRecording.block(0, 3, 1000)));
        assertThat(objects).hasSize(1);
        assertThat(Checkers.dciodvfyErrors(file(objects.get(0)))).isEmpty();
    }

    @Test
    void pydicom_reads_samples_labels_and_calibration_back() throws Exception {
        Block one = MadeRecording.block(0, 3, 40_000);
        Block two = MadeRecording.block(40_000, 3, 777);
        WrittenObject object = write(threeLeads(one, two)).get(0);
        Path samples = Files.writeString(folder.resolve("samples"), text(one) + text(two));
        String script =
                """
                import pydicom, numpy
                ds = pydicom.dcmread(r'%s')
                group = ds.WaveformSequence[0]
                raw = numpy.frombuffer(group.WaveformData, '<i2').reshape(-1, 3)
                wanted = numpy.loadtxt(r'%s', dtype=int)
                assert raw.shape == (40777, 3) and (raw == wanted).all(), 'samples'
                channels = group.ChannelDefinitionSequence
                print([c.ChannelLabel for c in channels])
                print([c.ChannelSourceSequence[0].CodeValue for c in channels])
                print([str(c.get('ChannelSensitivity')) for c in channels])
                print([str(c.get('ChannelBaseline')) for c in channels])
                print(ds.PatientName.family_name, ds.AcquisitionDateTime, group.SamplingFrequency)
                """;
        assertThat(Checkers.python(script.formatted(file(object), samples)))
                .isEqualTo(
                        """
                        ['MLII', 'V5', 'X7']
                        ['2:126', '2:7', '2:0']
                        ['4.88281', '2.5', 'None']
                        ['0', '-312.5', 'None']
                        Müller-Łukasz 20261024093015.000000+0100 200"""
                                .stripIndent());
    }

    private static String text(Block block) {
        var text = new StringBuilder();
        for (int i = 0; i < block.length(); i++) {
            for (int[] lead : block.samples()) {
                text.append(lead[i]).append(' ');
            }
            text.append('\n');
        }
        return text.toString();
    }

    @Test
    void a_missing_sample_is_the_padding_value() throws IOException {
        int[][] samples = {{1, Block.MISSING, -32_767, 32_767}};
        var recording =
                new MadeRecording(100, MadeRecording.leads("II"), List.of(new Block(0, samples)));
        DataSet group = read(write(recording).get(0)).item(Tag.WaveformSequence).orElseThrow();
        assertThat(group.bytes(Tag.WaveformPaddingValue)).containsExactly(0, 0x80);
        assertThat(group.bytes(Tag.WaveformData))
                .containsExactly(1, 0, 0, 0x80, 0x01, 0x80, 0xFF, 0x7F);
    }

    @Test
    void a_gap_begins_a_new_object_of_the_same_series() throws Exception {
        var objects =
                write(
                        threeLeads(
                                MadeRecording.block(0, 3, 500),
                                MadeRecording.block(500, 3, 100),
                                MadeRecording.block(1_001, 3, 300)));
        assertThat(objects).extracting(WrittenObject::samples).containsExactly(600L, 300L);
        assertThat(objects).extracting(WrittenObject::number).containsExactly(1, 2);
        assertThat(objects).extracting(WrittenObject::firstSample).containsExactly(0L, 1_001L);
        assertThat(objects)
                .extracting(WrittenObject::seriesInstanceUid)
                .containsOnly(objects.get(0).seriesInstanceUid());
        assertThat(objects.get(1).start())
                .isEqualTo(OffsetDateTime.parse("2026-10-24T09:30:20.005+01:00"));
        assertThat(read(objects.get(1)).text(Tag.AcquisitionDateTime))
                .contains("20261024093020.005000+0100");
        for (WrittenObject object : objects) {
            assertThat(Checkers.dciodvfyErrors(file(object))).isEmpty();
            assertThat(Files.size(file(object))).isEqualTo(object.bytes());
        }
    }

    /** The clocks in Lisbon went back on 25 October 2026 at 01:00 UTC. */
    @Test
    void an_object_has_at_most_24_hours_and_its_own_offset_from_utc() throws IOException {
        int day = 24 * 60 * 60 * 50;
        var recording =
                new MadeRecording(
                        50,
                        MadeRecording.leads("II"),
                        List.of(
                                MadeRecording.block(0, 1, day - 10),
                                MadeRecording.block(day - 10, 1, 60)));
        var objects = write(recording);
        assertThat(objects).extracting(WrittenObject::samples).containsExactly((long) day, 50L);
        assertThat(objects.get(1).start().toInstant())
                .isEqualTo(objects.get(0).start().toInstant().plusSeconds(86_400));
        assertThat(read(objects.get(1)).text(Tag.AcquisitionDateTime))
                .contains("20261025083015.000000+0000");
    }

    @Test
    void the_same_input_makes_the_same_bytes() throws IOException {
        WrittenObject one = write(threeLeads(MadeRecording.block(0, 3, 100))).get(0);
        byte[] bytes = Files.readAllBytes(file(one));
        Files.delete(file(one));
        WrittenObject two = write(threeLeads(MadeRecording.block(0, 3, 100))).get(0);
        assertThat(two).isEqualTo(one);
        assertThat(Files.readAllBytes(file(two))).isEqualTo(bytes);
    }

    @Test
    void the_order_is_in_the_object() throws IOException {
        DataSet object = read(write(threeLeads(MadeRecording.block(0, 3, 100))).get(0));
        assertThat(object.text(Tag.AccessionNumber)).contains("A1001");
        assertThat(object.text(Tag.IssuerOfPatientID)).contains("HARROWBAY");
        assertThat(object.text(Tag.PlacerOrderNumberImagingServiceRequest)).contains("P-77");
        assertThat(object.text(Tag.FillerOrderNumberImagingServiceRequest)).contains("F-12");
        assertThat(
                        object.item(Tag.RequestAttributesSequence)
                                .orElseThrow()
                                .text(Tag.RequestedProcedureID))
                .contains("A1001");
        assertThat(object.text(Tag.StudyInstanceUID)).contains(Orders.monitoring().studyUid());
    }

    @Test
    void a_recording_that_cannot_be_an_ambulatory_ecg_is_refused_in_a_sentence() {
        var leads = MadeRecording.leads("II");
        refused(new MadeRecording(20, leads, List.of()), "(003A,001A)", "this one has 20.0 Hz.");
        refused(new MadeRecording(4000, leads, List.of()), "(003A,001A)", "4000.0 Hz.");
        refused(new MadeRecording(199.99, leads, List.of()), "(003A,001A)", "199.99 Hz.");
        var thirteen = MadeRecording.leads("1 2 3 4 5 6 7 8 9 10 11 12 13".split(" "));
        refused(new MadeRecording(200, thirteen, List.of()), "(003A,0005)", "has 13.");
        var deep = List.of(new Lead("II", 1, 0, 24));
        refused(new MadeRecording(200, deep, List.of()), "(003A,021A)", "of 24 bits");
        refused(
                new MadeRecording(Optional.empty(), 200, leads, List.of()),
                "(0008,002A)",
                "does not say when it started");
    }

    @Test
    void a_sample_beyond_16_bits_is_refused_and_leaves_no_object() throws IOException {
        int[][] samples = {{1, 40_000}};
        refused(
                new MadeRecording(200, MadeRecording.leads("II"), List.of(new Block(0, samples))),
                "(5400,1010)",
                "does not fit the 16 bits");
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left).isEmpty();
        }
    }

    private void refused(MadeRecording recording, String location, String text) {
        assertThatThrownBy(() -> write(recording))
                .isInstanceOfSatisfying(
                        ContentError.class,
                        e -> {
                            assertThat(e.problems()).hasSize(1);
                            assertThat(e.problems().get(0).location()).isEqualTo(location);
                            assertThat(e.problems().get(0).text()).contains(text);
                        });
    }
}

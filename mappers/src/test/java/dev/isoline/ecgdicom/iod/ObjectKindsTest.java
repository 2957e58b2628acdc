package dev.isoline.ecgdicom.iod;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.FileBulk;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Tag;
import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Block;
import dev.isoline.ecg.DiaryEntry;
import dev.isoline.ecg.Filter;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.Rhythm;
import dev.isoline.ecg.RhythmEpisode;
import dev.isoline.ecg.Stretch;
import dev.isoline.ecg.summary.HeartRates;
import dev.isoline.ecg.summary.MadeSummary;
import dev.isoline.ecgdicom.Checkers;
import dev.isoline.ecgdicom.MadeFindings;
import dev.isoline.ecgdicom.MadeRecording;
import dev.isoline.ecgdicom.Orders;
import dev.isoline.ecgdicom.PdfDocument;
import dev.isoline.ecgdicom.StripSettings;
import dev.isoline.ecgdicom.TestFolder;
import dev.isoline.ecgdicom.WrittenDocument;
import dev.isoline.ecgdicom.WrittenObject;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** PS3.3 A.34.3 to A.34.5 and A.45.1: dciodvfy likes and pydicom reads every kind of object. */
class ObjectKindsTest {

    private static final String[] TWELVE = "V6 V5 V4 V3 V2 V1 aVF aVL aVR III II I".split(" ");

    @TempDir Path folder;

    private final MadeFindings made = new MadeFindings();

    private List<WrittenObject> write(int hz, List<Lead> leads, Block... blocks)
            throws IOException {
        return RecordingToObjects.write(
                new MadeRecording(hz, leads, List.of(blocks)),
                made.build(),
                StripSettings.DEFAULT,
                Orders.monitoring(),
                Orders.LISBON,
                new TestFolder(folder));
    }

    private Path file(String sopInstanceUid) {
        return folder.resolve(sopInstanceUid + ".dcm");
    }

    private DataSet read(WrittenObject object) throws IOException {
        try (var channel = FileChannel.open(file(object.sopInstanceUid()))) {
            return Part10.read(channel, ReadLimits.DEFAULT).dataSet();
        }
    }

    /** A minute of beats with all that can be annotated. */
    private void everything(int hz) {
        made.hz = hz;
        made.recorded(0, 60L * hz);
        for (int i = 0; i < 55; i++) {
            made.beat((long) hz * i + 3, i % 9 == 4 ? Beat.Kind.V : Beat.Kind.N);
        }
        made.beat(57L * hz, Beat.Kind.S);
        made.longestRr = Optional.of(made.interval(54L * hz + 3, 57L * hz));
        made.pauses.add(made.longestRr.get());
        made.rate =
                Optional.of(
                        new HeartRates.Rate(60, 59, made.time(hz + 3L), 61, made.time(hz + 3L)));
        made.variability = MadeSummary.variability(49, 12.5, 10, 1);
        made.rhythms.add(new RhythmEpisode(new Stretch(0, 10L * hz), Rhythm.SINUS));
        made.flutter.add(new Stretch(30L * hz, 31L * hz));
        made.silent.add(new Stretch(40L * hz, 45L * hz));
        made.silent.add(new Stretch(50L * hz, 51L * hz));
        made.diary.add(new DiaryEntry(20L * hz, 0, "Schwindel, Zoë fragen"));
    }

    @Test
    void an_annotated_recording_and_its_strips() throws Exception {
        everything(200);
        var objects =
                write(200, MadeRecording.leads("II", "V5"), MadeRecording.block(0, 2, 12_000));
        assertThat(objects)
                .extracting(WrittenObject::sopClassUid)
                .containsExactly(
                        EcgIod.AMBULATORY.sopClassUid(),
                        EcgIod.GENERAL.sopClassUid(),
                        EcgIod.GENERAL.sopClassUid());
        assertThat(objects).extracting(WrittenObject::number).containsExactly(1, 1, 2);
        assertThat(objects.get(1).seriesInstanceUid())
                .isEqualTo(objects.get(2).seriesInstanceUid())
                .isNotEqualTo(objects.get(0).seriesInstanceUid());
        for (WrittenObject object : objects) {
            boolean whole = object == objects.get(0);
            String iod = whole ? "AmbulatoryECG" : "GeneralECG";
            assertThat(Checkers.dciodvfyErrors(iod, file(object.sopInstanceUid()))).isEmpty();
            assertThat(Files.size(file(object.sopInstanceUid()))).isEqualTo(object.bytes());
        }
    }

    @Test
    void the_same_findings_make_the_same_uid_and_other_findings_another() throws Exception {
        made.recorded(0, 400);
        made.beat(10, Beat.Kind.N);
        var block = MadeRecording.block(0, 1, 400);
        var leads = MadeRecording.leads("II");
        String uid = write(200, leads, block).get(0).sopInstanceUid();
        Files.delete(file(uid));
        assertThat(write(200, leads, block).get(0).sopInstanceUid()).isEqualTo(uid);
        made.beat(210, Beat.Kind.N);
        assertThat(write(200, leads, block).get(0).sopInstanceUid()).isNotEqualTo(uid);
    }

    @Test
    void pydicom_reads_the_annotations_back() throws Exception {
        everything(200);
        var object =
                write(200, MadeRecording.leads("II", "V5"), MadeRecording.block(0, 2, 12_000))
                        .get(0);
        String script =
                """
                import pydicom
                ds = pydicom.dcmread(r'%s')
                for a in ds.WaveformAnnotationSequence:
                    assert list(a.ReferencedWaveformChannels) == [1, 0]
                    what = a.get('UnformattedTextValue') or a.ConceptNameCodeSequence[0].CodeValue
                    value = '' if 'NumericValue' not in a else '%%s %%s' %% (
                        a.NumericValue, a.MeasurementUnitsCodeSequence[0].CodeValue)
                    at = a.get('ReferencedSamplePositions', [])
                    at = at if isinstance(at, (list, pydicom.multival.MultiValue)) else [at]
                    group = a.get('AnnotationGroupNumber')
                    print(group, what[:21], value, a.get('TemporalRangeType'), len(at), list(at[:3]))
                """;
        assertThat(Checkers.python(script.formatted(file(object.sopInstanceUid()))))
                .isEqualTo(
                        """
                        1 Beats, their classes   None 0 []
                        1 10:8208  MULTIPOINT 49 [4, 204, 404]
                        1 10:8256  POINT 1 [11401]
                        1 10:8336  MULTIPOINT 6 [804, 2604, 4404]
                        1 10:9216  SEGMENT 2 [1, 2000]
                        1 Ventricular flutter o  SEGMENT 2 [6001, 6200]
                        2 What is in this annot  None 0 []
                        2 10:11248  MULTISEGMENT 4 [8001, 9000, 10001]
                        2 2:16168 2985 ms SEGMENT 2 [10804, 11401]
                        2 8867-4 59 /min SEGMENT 2 [204, 1804]
                        2 8867-4 61 /min SEGMENT 2 [204, 1804]
                        2 8867-4 60 /min None 0 []
                        2 sdnn 12.5 ms None 0 []
                        2 rmssd 10 ms None 0 []
                        2 pnn50 1 % None 0 []
                        None Schwindel, Zoë fragen  POINT 1 [4001]"""
                                .stripIndent());
    }

    @Test
    void a_strip_has_the_samples_of_its_seconds_and_says_what_it_shows() throws Exception {
        everything(200);
        Block block = MadeRecording.block(0, 2, 12_000);
        var strip = write(200, MadeRecording.leads("II", "V5"), block).get(2);
        assertThat(strip.firstSample()).isEqualTo(10_000);
        assertThat(strip.start()).isEqualTo("2026-10-24T09:31:05+01:00");
        int[] wanted = Arrays.copyOfRange(block.samples()[1], 10_000, 12_000);
        Path samples = folder.resolve("samples");
        Files.writeString(
                samples,
                String.join(" ", Arrays.stream(wanted).mapToObj(String::valueOf).toList()));
        String script =
                """
                import pydicom, numpy
                ds = pydicom.dcmread(r'%s')
                raw = numpy.frombuffer(ds.WaveformSequence[0].WaveformData, '<i2').reshape(-1, 2)
                assert (raw[:, 1] == numpy.loadtxt(r'%s', dtype=int)).all()
                print(ds.WaveformAnnotationSequence[0].UnformattedTextValue, ds.SeriesDescription)
                """;
        assertThat(Checkers.python(script.formatted(file(strip.sopInstanceUid()), samples)))
                .isEqualTo("Strip for: longest RR interval, pause. Strips");
    }

    /** PS3.3 A.34.4.4: a General ECG has at least 200 Hz. */
    @Test
    void strips_of_a_slower_recording_are_ambulatory_ecg_objects() throws Exception {
        everything(128);
        var objects = write(128, MadeRecording.leads("II"), MadeRecording.block(0, 1, 7_680));
        assertThat(objects)
                .hasSize(3)
                .extracting(WrittenObject::sopClassUid)
                .containsOnly(EcgIod.AMBULATORY.sopClassUid());
        for (WrittenObject object : objects) {
            assertThat(Checkers.dciodvfyErrors(file(object.sopInstanceUid()))).isEmpty();
        }
    }

    @Test
    void strips_of_the_twelve_leads_are_12_lead_ecg_objects_in_their_customary_order()
            throws Exception {
        everything(500);
        Block block = MadeRecording.block(0, 12, 30_000);
        var objects = write(500, MadeRecording.leads(TWELVE), block);
        assertThat(objects).hasSize(3);
        var strip = objects.get(1);
        assertThat(strip.sopClassUid()).isEqualTo(EcgIod.TWELVE_LEAD.sopClassUid());
        assertThat(Checkers.dciodvfyErrors("TwelveLeadECG", file(strip.sopInstanceUid())))
                .isEmpty();
        DataSet group = read(strip).item(Tag.WaveformSequence).orElseThrow();
        assertThat(group.items(Tag.ChannelDefinitionSequence))
                .extracting(channel -> channel.text(Tag.ChannelLabel).orElse(""))
                .containsExactly(
                        "I", "II", "III", "aVR", "aVL", "aVF", "V1", "V2", "V3", "V4", "V5", "V6");
        String script =
                """
                import pydicom, numpy
                group = pydicom.dcmread(r'%s').WaveformSequence[0]
                print(numpy.frombuffer(group.WaveformData, '<i2').reshape(-1, 12)[0].tolist())
                """;
        int[] wanted = new int[12];
        for (int i = 0; i < 12; i++) {
            wanted[i] = block.samples()[11 - i][(int) strip.firstSample()];
        }
        assertThat(Checkers.python(script.formatted(file(strip.sopInstanceUid()))))
                .isEqualTo(Arrays.toString(wanted));
    }

    @Test
    void a_short_recording_of_the_twelve_leads_is_one_12_lead_ecg_with_or_without_analysis()
            throws Exception {
        made.hz = 1000;
        made.recorded(0, 10_000);
        var block = MadeRecording.block(0, 12, 10_000);
        var objects = write(1000, MadeRecording.leads(TWELVE), block);
        assertThat(objects)
                .extracting(WrittenObject::sopClassUid)
                .containsExactly(EcgIod.AMBULATORY.sopClassUid(), EcgIod.TWELVE_LEAD.sopClassUid());
        assertThat(objects.get(1).samples()).isEqualTo(10_000);
        assertThat(Checkers.dciodvfyErrors("TwelveLeadECG", file(objects.get(1).sopInstanceUid())))
                .isEmpty();
    }

    @Test
    void a_value_that_cannot_be_missing_is_a_sample_and_no_padding_is_declared() throws Exception {
        int[][] samples = {{-32_768, 1}};
        var recording =
                new MadeRecording(200, MadeRecording.leads("II"), List.of(new Block(0, samples)))
                        .withoutMissing();
        var object =
                RecordingToObjects.write(
                                recording,
                                Orders.monitoring(),
                                Orders.LISBON,
                                new TestFolder(folder))
                        .get(0);
        DataSet group = read(object).item(Tag.WaveformSequence).orElseThrow();
        assertThat(group.contains(Tag.WaveformPaddingValue)).isFalse();
        assertThat(group.bytes(Tag.WaveformData)).containsExactly(0, 0x80, 1, 0);
    }

    @Test
    void a_channel_says_what_it_was_filtered_with_and_that_it_is_not_calibrated() throws Exception {
        made.recorded(0, 400);
        var filter =
                new Filter(OptionalDouble.of(0.05), OptionalDouble.of(100), OptionalDouble.of(50));
        var leads = List.of(new Lead("II", 2.5, -10, 12, filter), new Lead("V1", 0, 0, 12));
        var object = write(200, leads, MadeRecording.block(0, 2, 400)).get(0);
        var channels =
                read(object)
                        .item(Tag.WaveformSequence)
                        .orElseThrow()
                        .items(Tag.ChannelDefinitionSequence);
        assertThat(channels.get(0).text(Tag.FilterLowFrequency)).contains("0.05");
        assertThat(channels.get(0).text(Tag.FilterHighFrequency)).contains("100");
        assertThat(channels.get(0).text(Tag.NotchFilterFrequency)).contains("50");
        assertThat(channels.get(0).contains(Tag.ChannelStatus)).isFalse();
        assertThat(channels.get(1).text(Tag.ChannelStatus)).contains("UNCALIBRATED");
        assertThat(channels.get(1).contains(Tag.FilterLowFrequency)).isFalse();
        assertThat(Checkers.dciodvfyErrors(file(object.sopInstanceUid()))).isEmpty();
    }

    @Test
    void a_recording_that_reads_otherwise_the_second_time_is_refused() {
        made.recorded(0, 500);
        assertThatThrownBy(
                        () -> write(200, MadeRecording.leads("II"), MadeRecording.block(0, 1, 400)))
                .isInstanceOf(RecordingException.class)
                .hasMessage("The recording has not the same samples read again.");
        assertThat(folder).isEmptyDirectory();
    }

    /** PS3.3 C.24.2: the length is that of the file, the value is padded to an even one. */
    @Test
    void a_report_is_an_encapsulated_pdf_in_the_study_of_its_waveforms() throws Exception {
        made.recorded(0, 400);
        var waveforms = write(200, MadeRecording.leads("II"), MadeRecording.block(0, 1, 400));
        Path pdf = folder.resolve("report.pdf");
        Files.writeString(pdf, "%PDF-1.4\n" + "1 0 obj\n".repeat(20_000) + "%%EOF\n");
        assertThat(Files.size(pdf) % 2).isEqualTo(1);
        WrittenDocument written;
        try (var channel = FileChannel.open(pdf)) {
            var document =
                    new PdfDocument(
                            "content-2",
                            "",
                            Optional.of(waveforms.get(0).start()),
                            Optional.empty(),
                            new FileBulk(channel, 0, channel.size()),
                            waveforms);
            written =
                    EncapsulatedPdfIod.write(document, Orders.monitoring(), new TestFolder(folder));
        }
        Path object = file(written.sopInstanceUid());
        assertThat(Files.size(object)).isEqualTo(written.bytes());
        assertThat(written.studyInstanceUid()).isEqualTo(waveforms.get(0).studyInstanceUid());
        assertThat(Checkers.dciodvfyErrors("EncapsulatedPDF", object)).isEmpty();
        String script =
                """
                import pydicom
                ds = pydicom.dcmread(r'%s')
                pdf = open(r'%s', 'rb').read()
                assert ds.EncapsulatedDocument == pdf + b'\\0', 'document'
                assert ds.EncapsulatedDocumentLength == len(pdf), 'length'
                print(ds.Modality, ds.MIMETypeOfEncapsulatedDocument, ds.DocumentTitle, ds.BurnedInAnnotation,
                      ds.SourceInstanceSequence[0].ReferencedSOPInstanceUID == '%s')
                """;
        assertThat(
                        Checkers.python(
                                script.formatted(object, pdf, waveforms.get(0).sopInstanceUid())))
                .isEqualTo("ECG application/pdf Holter monitor study YES True");
    }
}

package dev.isoline.ecg.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.Vr;
import dev.isoline.ecg.Block;
import dev.isoline.ecg.Damage;
import dev.isoline.ecg.FilesInFolder;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingHeader.Identity;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Waveform objects as recordings: PS3.3 C.10.9, identity of C.7.1.1, order of C.7.3.1. */
class DicomRecordingTest {

    private static final int SAMPLES = 1000;
    private static final int PADDING = -32768;

    @TempDir Path folder;

    // Samples

    /** PS3.3 C.10.9: value = sample x sensitivity x correction factor + baseline, in its units. */
    @ParameterizedTest
    @EnumSource(TransferSyntax.class)
    void samples_are_physical_values_whatever_the_transfer_syntax(TransferSyntax syntax)
            throws IOException {
        try (var recording = open(object(), syntax)) {
            var leads = recording.header().leads();
            assertThat(leads).extracting(l -> l.label()).containsExactly("II", "Lead V5");
            assertThat(leads.get(0).microvolts(100)).isCloseTo(2.5 * 100 * 1.02, within(1e-9));
            assertThat(leads.get(1).microvolts(100)).isCloseTo(1000 * 0.1 + 250, within(1e-9));
            Block block = recording.next().orElseThrow();
            assertThat(block.samples()[0]).startsWith(0, 1, 2).hasSize(SAMPLES);
            assertThat(block.samples()[1]).startsWith(0, -1, -2);
            assertThat(recording.next()).isEmpty();
        }
    }

    @Test
    void padding_is_a_sample_that_was_not_taken() throws IOException {
        byte[] padding = {0, (byte) 0x80};
        var object = object();
        group(object).putBytes(Tag.WaveformPaddingValue, Vr.OW, padding);
        try (var recording = open(object, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN)) {
            assertThat(recording.marksMissing()).isTrue();
            assertThat(recording.next().orElseThrow().samples()[0][SAMPLES - 1])
                    .isEqualTo(Block.MISSING);
        }
        try (var recording = open(object(), TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN)) {
            assertThat(recording.next().orElseThrow().samples()[0][SAMPLES - 1]).isEqualTo(PADDING);
        }
    }

    @Test
    void fewer_samples_than_the_count_says_are_refused() throws IOException {
        var object = object();
        group(object).putInts(Tag.NumberOfWaveformSamples, SAMPLES + 1);
        assertThatThrownBy(() -> open(object, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining("shorter than its sample count");
    }

    // Whose, and of which order

    @Test
    void the_patient_is_the_alphabetic_name_and_what_goes_with_it() throws IOException {
        var object =
                object().putText(Tag.PatientName, "Quillfeather^Ottoline^M.^Dr.=Q^O")
                        .putText(Tag.PatientBirthDate, "19590713")
                        .putText(Tag.PatientSex, "O");
        assertThat(identity(object))
                .isEqualTo(
                        new Identity("QMR1", "Quillfeather", "Ottoline M.", "1959-07-13", "", ""));
    }

    @Test
    void the_order_is_the_first_number_there_is() throws IOException {
        var object = object();
        object.putText(Tag.PlacerOrderNumberImagingServiceRequest, "P1");
        assertThat(identity(object).orderNumber()).isEqualTo("P1");
        object.putText(Tag.FillerOrderNumberImagingServiceRequest, "F1");
        assertThat(identity(object).orderNumber()).isEqualTo("F1");
        var request = new DataSet().putText(Tag.RequestedProcedureID, "R1");
        object.putItems(Tag.RequestAttributesSequence, List.of(request));
        assertThat(identity(object).orderNumber()).isEqualTo("R1");
        object.putText(Tag.AccessionNumber, "A1");
        assertThat(identity(object).orderNumber()).isEqualTo("A1");
    }

    // When

    @ParameterizedTest
    @CsvSource({
        "20261104140000+0500,, +05:00",
        "20261104140000.000-0330, +0100, -03:30",
        "20261104140000, +0100, +01:00",
        "20261104140000,,",
        "20261104140000+9900,,"
    })
    void the_start_has_the_offset_it_ends_with_else_that_of_the_object(
            String acquisition, String timezone, ZoneOffset offset) throws IOException {
        var object = object().putText(Tag.AcquisitionDateTime, acquisition);
        if (timezone != null) {
            object.putText(Tag.TimezoneOffsetFromUTC, timezone);
        }
        try (var recording = open(object, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN)) {
            assertThat(recording.header().start()).contains(LocalDateTime.of(2026, 11, 4, 14, 0));
            assertThat(recording.offset()).isEqualTo(Optional.ofNullable(offset));
        }
    }

    @Test
    void without_acquisition_datetime_the_content_is_dated() throws IOException {
        var object = object().putText(Tag.ContentDate, "20261105").putText(Tag.ContentTime, "0730");
        object.remove(Tag.AcquisitionDateTime);
        try (var recording = open(object, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN)) {
            assertThat(recording.header().start()).contains(LocalDateTime.of(2026, 11, 5, 7, 30));
        }
    }

    @Test
    void an_archive_knows_it_by_its_uids() throws IOException {
        try (var recording = open(object(), TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN)) {
            assertThat(recording.uids())
                    .isEqualTo(
                            new DicomRecording.ObjectUids(
                                    "2.999.1",
                                    "2.999.2",
                                    "1.2.840.10008.5.1.4.1.1.9.1.3",
                                    "2.999.3",
                                    7));
        }
    }

    private Identity identity(DataSet object) throws IOException {
        try (var recording = open(object, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN)) {
            return recording.header().identity();
        }
    }

    private DicomRecording open(DataSet object, TransferSyntax syntax) throws IOException {
        Path file = folder.resolve("object.dcm");
        try (var channel =
                FileChannel.open(
                        file,
                        StandardOpenOption.CREATE,
                        StandardOpenOption.TRUNCATE_EXISTING,
                        StandardOpenOption.WRITE)) {
            Part10.write(channel, syntax, object);
        }
        String name = file.getFileName().toString();
        return DicomRecording.open(
                new FilesInFolder(file.getParent(), List.of(name)), name, Damage.REFUSE);
    }

    private static DataSet group(DataSet object) {
        return object.item(Tag.WaveformSequence).orElseThrow();
    }

    private static DataSet object() throws IOException {
        return new DataSet()
                .putText(Tag.SOPClassUID, "1.2.840.10008.5.1.4.1.1.9.1.3")
                .putText(Tag.SOPInstanceUID, "2.999.3")
                .putText(Tag.AcquisitionDateTime, "20261104090000")
                .putText(Tag.Modality, "ECG")
                .putText(Tag.PatientID, "QMR1")
                .putText(Tag.StudyInstanceUID, "2.999.1")
                .putText(Tag.SeriesInstanceUID, "2.999.2")
                .putInts(Tag.InstanceNumber, 7)
                .putItems(Tag.WaveformSequence, List.of(multiplexGroup()));
    }

    private static DataSet multiplexGroup() throws IOException {
        return new DataSet()
                .putInts(Tag.NumberOfWaveformChannels, 2)
                .putInts(Tag.NumberOfWaveformSamples, SAMPLES)
                .putNumbers(Tag.SamplingFrequency, 250)
                .putItems(
                        Tag.ChannelDefinitionSequence,
                        List.of(
                                channel("uV", 2.5, 1.02, 0).putText(Tag.ChannelLabel, "II"),
                                channel("mV", 0.001, 1, 0.25)))
                .putInts(Tag.WaveformBitsAllocated, 16)
                .putText(Tag.WaveformSampleInterpretation, "SS")
                .putBytes(Tag.WaveformData, Vr.OW, data());
    }

    private static DataSet channel(
            String unit, double sensitivity, double correction, double baseline)
            throws IOException {
        return new DataSet()
                .putItems(
                        Tag.ChannelSourceSequence,
                        List.of(new DataSet().putText(Tag.CodeMeaning, "Lead V5")))
                .putNumbers(Tag.ChannelSensitivity, sensitivity)
                .putItems(
                        Tag.ChannelSensitivityUnitsSequence,
                        List.of(new DataSet().putText(Tag.CodeValue, unit)))
                .putNumbers(Tag.ChannelSensitivityCorrectionFactor, correction)
                .putNumbers(Tag.ChannelBaseline, baseline);
    }

    /** Counts up in the first channel and down in the second; its last sample is the padding. */
    private static byte[] data() {
        var bytes = ByteBuffer.allocate(4 * SAMPLES).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < SAMPLES - 1; i++) {
            bytes.putShort((short) i).putShort((short) -i);
        }
        return bytes.putShort((short) PADDING).putShort((short) 0).array();
    }
}

package dev.isoline.ecgdicom.iod;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.Vr;
import dev.isoline.ecgdicom.MadeRecording;
import dev.isoline.ecgdicom.Orders;
import dev.isoline.ecgdicom.TestFolder;
import dev.isoline.order.Problem;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** PS3.3 A.34.5.4 (2020a): faults that dciodvfy 20220618 does not see (measured). */
class IodLimitsTest {

    @TempDir Path folder;

    private DataSet object;
    private DataSet group;
    private DataSet channel;

    @BeforeEach
    void a_good_object() throws IOException {
        var recording =
                new MadeRecording(
                        200,
                        MadeRecording.leads("II", "V5"),
                        List.of(MadeRecording.block(0, 2, 400)));
        var written =
                RecordingToObjects.write(
                        recording, Orders.monitoring(), Orders.LISBON, new TestFolder(folder));
        try (var channelOfFile =
                FileChannel.open(folder.resolve(written.get(0).sopInstanceUid() + ".dcm"))) {
            object = Part10.read(channelOfFile, ReadLimits.DEFAULT).dataSet();
        }
        group = object.item(Tag.WaveformSequence).orElseThrow();
        channel = group.items(Tag.ChannelDefinitionSequence).get(1);
    }

    private List<String> locations() {
        return IodLimits.check(EcgIod.AMBULATORY, object).stream().map(Problem::location).toList();
    }

    @Test
    void a_good_object_has_no_problem() {
        assertThat(locations()).isEmpty();
    }

    @Test
    void rates_outside_50_to_1000_hz() throws DicomException {
        group.putText(Tag.SamplingFrequency, "20");
        assertThat(locations()).containsExactly("(003A,001A)");
        group.putText(Tag.SamplingFrequency, "4000");
        assertThat(locations()).containsExactly("(003A,001A)");
        group.putText(Tag.SamplingFrequency, "50");
        assertThat(locations()).isEmpty();
        group.putText(Tag.SamplingFrequency, "1000");
        assertThat(locations()).isEmpty();
    }

    @Test
    void thirteen_channels() throws DicomException {
        var thirteen = new ArrayList<DataSet>();
        for (int i = 0; i < 13; i++) {
            thirteen.add(channel);
        }
        group.putItems(Tag.ChannelDefinitionSequence, thirteen)
                .putInts(Tag.NumberOfWaveformChannels, 13)
                .putBytes(Tag.WaveformData, Vr.OW, new byte[400 * 13 * 2]);
        assertThat(locations()).containsExactly("(003A,0005)");
    }

    @Test
    void a_count_that_does_not_fit_the_data() throws DicomException {
        group.putInts(Tag.NumberOfWaveformSamples, 401);
        assertThat(locations()).containsExactly("(5400,1010)");
    }

    @Test
    void a_channel_that_is_not_described() throws DicomException {
        group.putItems(Tag.ChannelDefinitionSequence, List.of(channel));
        assertThat(locations()).containsExactly("(003A,0200)");
    }

    @Test
    void two_multiplex_groups_and_none() {
        object.putItems(Tag.WaveformSequence, List.of(group, group));
        assertThat(locations()).containsExactly("(5400,0100)");
        object.putItems(Tag.WaveformSequence, List.of());
        assertThat(locations()).containsExactly("(5400,0100)");
    }

    @Test
    void other_interpretations_and_bits() throws DicomException {
        group.putText(Tag.WaveformSampleInterpretation, "US");
        assertThat(locations()).containsExactly("(5400,1006)");
        group.putText(Tag.WaveformSampleInterpretation, "SB");
        assertThat(locations()).containsExactly("(5400,1004)");
    }

    @Test
    void another_modality() throws DicomException {
        object.putText(Tag.Modality, "HD");
        assertThat(locations()).containsExactly("(0008,0060)");
    }

    @Test
    void channels_without_source_skew_or_half_calibrated() throws DicomException {
        channel.remove(Tag.ChannelSourceSequence);
        assertThat(locations()).containsExactly("(003A,0208)");
        channel.putText(Tag.ChannelTimeSkew, "0");
        assertThat(locations()).containsExactly("(003A,0208)", "(003A,0215)");
        channel.remove(Tag.ChannelBaseline);
        assertThat(locations()).containsExactly("(003A,0208)", "(003A,0215)", "(003A,0210)");
    }

    private List<String> locations(EcgIod iod) {
        return IodLimits.check(iod, object).stream().map(Problem::location).toList();
    }

    /** PS3.3 A.34.3.4 and A.34.4.4. */
    @Test
    void a_general_and_a_12_lead_ecg_have_at_least_200_hz() throws DicomException {
        assertThat(locations(EcgIod.GENERAL)).isEmpty();
        assertThat(locations(EcgIod.TWELVE_LEAD)).isEmpty();
        group.putText(Tag.SamplingFrequency, "199");
        assertThat(locations(EcgIod.GENERAL)).containsExactly("(003A,001A)");
        assertThat(locations(EcgIod.TWELVE_LEAD)).containsExactly("(003A,001A)");
    }

    @Test
    void a_12_lead_ecg_has_at_most_16384_samples_and_13_channels_in_all() throws DicomException {
        group.putInts(Tag.NumberOfWaveformSamples, 16_385)
                .putBytes(Tag.WaveformData, Vr.OW, new byte[16_385 * 2 * 2]);
        assertThat(locations(EcgIod.GENERAL)).isEmpty();
        assertThat(locations(EcgIod.TWELVE_LEAD)).containsExactly("(003A,0010)");
        group.putInts(Tag.NumberOfWaveformSamples, 16_384)
                .putBytes(Tag.WaveformData, Vr.OW, new byte[16_384 * 2 * 2]);
        object.putItems(Tag.WaveformSequence, List.of(group, group, group, group, group));
        assertThat(locations(EcgIod.TWELVE_LEAD)).isEmpty();
        assertThat(locations(EcgIod.GENERAL)).containsExactly("(5400,0100)");
        group.putItems(Tag.ChannelDefinitionSequence, List.of(channel, channel, channel))
                .putInts(Tag.NumberOfWaveformChannels, 3)
                .putBytes(Tag.WaveformData, Vr.OW, new byte[16_384 * 3 * 2]);
        assertThat(locations(EcgIod.TWELVE_LEAD)).containsExactly("(003A,0005)");
    }

    @Test
    void bytes_are_no_samples_of_a_general_ecg() throws DicomException {
        group.putText(Tag.WaveformSampleInterpretation, "SB")
                .putInts(Tag.WaveformBitsAllocated, 8)
                .putBytes(Tag.WaveformData, Vr.OW, new byte[400 * 2]);
        assertThat(locations(EcgIod.AMBULATORY)).isEmpty();
        assertThat(locations(EcgIod.GENERAL)).containsExactly("(5400,1006)");
    }
}

package dev.isoline.dicom.waveform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.dicom.AnnouncedBulk;
import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Files10;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.Python;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.RealFiles;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.Vr;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** PS3.3 C.10.9: samples and what they mean. */
class MultiplexGroupTest {

    private static final int PIECE = 999;

    @TempDir Path folder;

    private static DataSet channel(String sensitivity, String correction, String baseline)
            throws DicomException {
        var units = new DataSet().putText(Tag.CodeValue, "uV");
        return new DataSet()
                .putText(Tag.ChannelLabel, "V1")
                .putText(Tag.ChannelSensitivity, sensitivity)
                .putItems(Tag.ChannelSensitivityUnitsSequence, List.of(units))
                .putText(Tag.ChannelSensitivityCorrectionFactor, correction)
                .putText(Tag.ChannelBaseline, baseline);
    }

    private static DataSet group(String interpretation, int bits, byte[] data, int samples)
            throws DicomException {
        return new DataSet()
                .putInts(Tag.NumberOfWaveformChannels, 2)
                .putInts(Tag.NumberOfWaveformSamples, samples)
                .putText(Tag.SamplingFrequency, "250")
                .putItems(
                        Tag.ChannelDefinitionSequence,
                        List.of(channel("2.5", "1.1", "-40"), channel("1", "1", "0")))
                .putInts(Tag.WaveformBitsAllocated, bits)
                .putText(Tag.WaveformSampleInterpretation, interpretation)
                .putBytes(Tag.WaveformData, bits == 8 ? Vr.OB : Vr.OW, data);
    }

    /** C.10.9.1.4.2: the baseline is in the units and is not scaled. */
    @Test
    void a_baseline_is_added_after_scaling() throws IOException {
        byte[] data = {100, 0, 1, 0, -100, -1, 2, 0};
        MultiplexGroup group = MultiplexGroup.of(group("SS", 16, data, 2));
        assertThat(group.samples(0, 2)).isDeepEqualTo(new int[][] {{100, -100}, {1, 2}});
        assertThat(group.values(0, 2)[0])
                .containsExactly(100 * 2.5 * 1.1 - 40, -100 * 2.5 * 1.1 - 40);
        assertThat(group.values(1, 1)).isDeepEqualTo(new double[][] {{-315}, {2}});
        assertThat(group.channels().get(0).units()).isEqualTo("uV");
    }

    /** C.10.9.1.5, and PS3.5 7.1.1 for the byte that makes an odd count even. */
    @ParameterizedTest
    @CsvSource({
        "SB, 8, 80FF7F00, -128, -1, 127, 0",
        "UB, 8, 80FF7F00, 128, 255, 127, 0",
        "SS, 16, 0080FFFFFF7F0000, -32768, -1, 32767, 0",
        "US, 16, 0080FFFFFF7F0000, 32768, 65535, 32767, 0",
        "SL, 32, 00000080FFFFFFFFFFFFFF7F01000000, -2147483648, -1, 2147483647, 1"
    })
    void sample_interpretations(
            String interpretation, int bits, String hex, int a, int b, int c, int d)
            throws IOException {
        byte[] data = java.util.HexFormat.of().parseHex(hex);
        MultiplexGroup group = MultiplexGroup.of(group(interpretation, bits, data, 2));
        assertThat(group.samples(0, 2)).isDeepEqualTo(new int[][] {{a, c}, {b, d}});
    }

    /** Table C.10-9: Waveform Padding Value is no sample. */
    @Test
    void padding_is_no_value() throws IOException {
        DataSet item =
                group("SS", 16, new byte[] {0, -128, 0, 0}, 1)
                        .putBytes(Tag.WaveformPaddingValue, Vr.OW, new byte[] {0, -128});
        double[][] values = MultiplexGroup.of(item).values(0, 1);
        assertThat(values[0]).containsExactly(Double.NaN);
        assertThat(values[1]).containsExactly(0);
    }

    @Test
    void a_group_that_contradicts_itself_is_refused() throws DicomException {
        DataSet item = group("SS", 16, new byte[8], 2);
        assertThatThrownBy(() -> MultiplexGroup.of(group("SS", 16, new byte[8], 3)))
                .hasMessage("(5400,1010) Waveform Data has 8 bytes, but its counts say 12");
        assertThatThrownBy(() -> MultiplexGroup.of(group("SS", 8, new byte[8], 2)))
                .hasMessageContaining("does not fit the sample interpretation");
        assertThatThrownBy(() -> MultiplexGroup.of(group("MB", 8, new byte[4], 2)))
                .hasMessageContaining("is none of SB, UB, SS, US and SL");
        assertThatThrownBy(() -> MultiplexGroup.of(item.putInts(Tag.NumberOfWaveformChannels, 4)))
                .hasMessage(
                        "(003A,0005) Number of Waveform Channels is 4, but 2 channels are defined");
    }

    @Test
    void data_that_is_elsewhere_is_refused_when_it_is_read() throws IOException {
        DataSet item =
                group("SS", 16, new byte[8], 2)
                        .putBulk(Tag.WaveformData, Vr.OW, new AnnouncedBulk(8));
        MultiplexGroup group = MultiplexGroup.of(item);
        assertThatThrownBy(() -> group.samples(0, 1))
                .hasMessageContaining("is neither in memory nor in a file");
        assertThatThrownBy(() -> group.samples(1, 2)).isInstanceOf(IndexOutOfBoundsException.class);
    }

    /** Real files, and copies of them with a baseline; read in pieces from where they are. */
    @Test
    void values_of_real_files_are_those_of_pydicom() throws Exception {
        for (Path file : RealFiles.all()) {
            agree(file);
            agree(withBaseline(file));
        }
    }

    private Path withBaseline(Path file) throws IOException {
        DataSet dataSet = Files10.read(file).dataSet();
        for (DataSet group : dataSet.items(Tag.WaveformSequence)) {
            int number = 0;
            for (DataSet channel : group.items(Tag.ChannelDefinitionSequence)) {
                channel.putNumbers(Tag.ChannelBaseline, 12.5 - 3 * number++);
            }
        }
        Path copy = folder.resolve("baseline.dcm");
        Files10.write(copy, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN, dataSet);
        return copy;
    }

    private void agree(Path file) throws Exception {
        Path expected = folder.resolve("expected");
        Python.run(EXPECTED.formatted(file, expected));
        var values = ByteBuffer.wrap(Files.readAllBytes(expected)).order(ByteOrder.LITTLE_ENDIAN);
        try (var channel = FileChannel.open(file)) {
            DataSet dataSet = Part10.read(channel, ReadLimits.DEFAULT).dataSet();
            for (DataSet item : dataSet.items(Tag.WaveformSequence)) {
                compare(MultiplexGroup.of(item), values);
            }
        }
        assertThat(values.hasRemaining()).isFalse();
    }

    /** pydicom 2.3 adds the baseline before scaling, so it is asked for raw samples there. */
    private static final String EXPECTED =
            """
            import pydicom, numpy
            from pydicom.waveforms import multiplex_array
            ds = pydicom.dcmread(r'%s')
            with open(r'%s', 'wb') as out:
                for g, group in enumerate(ds.WaveformSequence):
                    a = multiplex_array(ds, g, as_raw=True).astype('f8')
                    base = [float(c.ChannelBaseline) for c in group.ChannelDefinitionSequence]
                    for i, c in enumerate(group.ChannelDefinitionSequence):
                        a[:, i] *= float(c.ChannelSensitivity)
                        a[:, i] *= float(c.ChannelSensitivityCorrectionFactor)
                        a[:, i] += base[i]
                    if not any(base):
                        assert numpy.allclose(a, ds.waveform_array(g), rtol=1e-12)
                    out.write(a.astype('<f8').tobytes())
            """;

    private static void compare(MultiplexGroup group, ByteBuffer expected) throws IOException {
        for (long at = 0; at < group.samples(); at += PIECE) {
            int count = (int) Math.min(PIECE, group.samples() - at);
            double[][] values = group.values(at, count);
            for (int i = 0; i < count; i++) {
                for (double[] channel : values) {
                    double theirs = expected.getDouble();
                    if (Math.abs(channel[i] - theirs) > 1e-9) {
                        assertThat(channel[i]).as("sample " + (at + i)).isEqualTo(theirs);
                    }
                }
            }
        }
    }
}

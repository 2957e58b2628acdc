package dev.isoline.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Data sets from and to streams that cannot be read again, as the network has them. */
class StreamTest {

    @TempDir Path folder;

    private static byte[] bytes(TransferSyntax syntax, DataSet dataSet) throws IOException {
        var bytes = new ByteArrayOutputStream();
        new DataSetWriter(Channels.newChannel(bytes), syntax).write(dataSet);
        return bytes.toByteArray();
    }

    private static DataSet read(TransferSyntax syntax, byte[] bytes, BulkStore store)
            throws IOException {
        var stream = Channels.newChannel(new ByteArrayInputStream(bytes));
        return DataSetReader.read(stream, syntax, ReadLimits.DEFAULT, store);
    }

    private static DataSet withSamples(int length) throws DicomException {
        byte[] samples = new byte[length];
        new Random(length).nextBytes(samples);
        var group = new DataSet().putBytes(Tag.WaveformData, Vr.OW, samples);
        return Samples.everything()
                .remove(Tag.WaveformData)
                .putItems(Tag.WaveformSequence, List.of(group, group));
    }

    @ParameterizedTest
    @EnumSource(TransferSyntax.class)
    void a_stream_gives_what_a_file_gives(TransferSyntax syntax) throws IOException {
        byte[] bytes = bytes(syntax, withSamples(20_000));
        DataSet streamed = read(syntax, bytes, BulkStore.NONE);
        assertThat(streamed).isEqualTo(DataSetReader.read(bytes, syntax, ReadLimits.DEFAULT));
        assertThat(bytes(syntax, streamed)).isEqualTo(bytes);
    }

    @ParameterizedTest
    @EnumSource(TransferSyntax.class)
    void bulk_of_a_stream_goes_to_a_file_and_out_again(TransferSyntax syntax) throws IOException {
        byte[] bytes = bytes(syntax, withSamples(200_000));
        try (var file =
                FileChannel.open(
                        folder.resolve("bulk"),
                        StandardOpenOption.CREATE,
                        StandardOpenOption.READ,
                        StandardOpenOption.WRITE)) {
            DataSet streamed = read(syntax, bytes, new FileBulkStore(file));
            assertThat(file.size()).isEqualTo(400_000);
            assertThat(bytes(syntax, streamed)).isEqualTo(bytes);
        }
    }

    @Test
    void bulk_nobody_stores_is_refused() throws IOException {
        var syntax = TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
        byte[] bytes = bytes(syntax, withSamples(200_000));
        assertThatThrownBy(() -> read(syntax, bytes, BulkStore.NONE))
                .hasMessage("(5400,1010) Waveform Data is longer than is accepted here");
    }

    @Test
    void a_store_that_leaves_bytes_is_a_fault() throws IOException {
        var syntax = TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
        byte[] bytes = bytes(syntax, withSamples(200_000));
        assertThatThrownBy(() -> read(syntax, bytes, (tag, n, value) -> new AnnouncedBulk(n)))
                .hasMessageContaining("was not taken as a whole");
    }

    @ParameterizedTest
    @EnumSource(TransferSyntax.class)
    void a_stream_cut_anywhere_is_refused(TransferSyntax syntax) throws IOException {
        byte[] bytes = bytes(syntax, withSamples(100));
        for (int end = 1; end < bytes.length; end++) {
            byte[] cut = java.util.Arrays.copyOf(bytes, end);
            try {
                DataSet shorter = read(syntax, cut, BulkStore.NONE);
                assertThat(bytes(syntax, shorter)).as("whole elements only").isEqualTo(cut);
            } catch (DicomException refused) {
                assertThat(refused).hasMessageMatching(".*(cut off|too few|first element).*");
            }
        }
    }
}

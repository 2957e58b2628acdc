package dev.isoline.dicom;

import static dev.isoline.dicom.TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.channels.WritableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** PS3.10 chapter 7: preamble, prefix, group 0002; and values that are never in memory. */
class Part10Test {

    @TempDir Path folder;

    @Test
    void group_length_counts_the_bytes_to_the_end_of_group_0002() throws IOException {
        Path file = folder.resolve("a.dcm");
        Files10.write(file, EXPLICIT_VR_LITTLE_ENDIAN, Samples.everything());
        var bytes = ByteBuffer.wrap(Files.readAllBytes(file)).order(ByteOrder.LITTLE_ENDIAN);
        int afterGroupLength = 128 + 4 + 12;
        int firstOfDataSet = afterGroupLength + bytes.getInt(afterGroupLength - 4);
        assertThat(bytes.getInt(firstOfDataSet)).isEqualTo(0x0005_0008);
        assertThat(Files10.read(file).meta().text(Tag.MediaStorageSOPClassUID))
                .contains("1.2.840.10008.5.1.4.1.1.9.1.3");
    }

    /** PS3.10 7.1 and PS3.5 6.2.2: unknown elements of group 0002 are ignored, none is UN. */
    @Test
    void elements_of_group_0002_that_nobody_knows_are_ignored() throws IOException {
        Path file = folder.resolve("a.dcm");
        Files10.write(file, EXPLICIT_VR_LITTLE_ENDIAN, Samples.everything());
        byte[] bytes = Files.readAllBytes(file);
        byte[] more = HexFormat.of().parseHex("0200f00f" + "554e0000" + "02000000" + "0102");
        int at = 128 + 4;
        Path odd = Files.write(folder.resolve("odd.dcm"), inserted(bytes, at, more));
        Part10 read = Files10.read(odd);
        assertThat(read.meta()).isEqualTo(Files10.read(file).meta());
        assertThat(read.dataSet()).isEqualTo(Files10.read(file).dataSet());
    }

    private static byte[] inserted(byte[] bytes, int at, byte[] more) {
        return ByteBuffer.allocate(bytes.length + more.length)
                .put(bytes, 0, at)
                .put(more)
                .put(bytes, at, bytes.length - at)
                .array();
    }

    /** PS3.5 7.1: groups 0000 to 0006 are of commands, files and directories. */
    @Test
    void a_data_set_has_no_element_of_group_0002() throws IOException {
        DataSet dataSet = Samples.everything().putText(Tag.ImplementationVersionName, "X");
        assertThatThrownBy(
                        () ->
                                Files10.write(
                                        folder.resolve("x"), EXPLICIT_VR_LITTLE_ENDIAN, dataSet))
                .hasMessage("(0002,0013) Implementation Version Name belongs to no data set");
    }

    @Test
    void the_same_data_set_is_the_same_file() throws IOException {
        Files10.write(folder.resolve("a"), EXPLICIT_VR_LITTLE_ENDIAN, Samples.everything());
        Files10.write(folder.resolve("b"), EXPLICIT_VR_LITTLE_ENDIAN, Samples.everything());
        assertThat(folder.resolve("a")).hasSameBinaryContentAs(folder.resolve("b"));
    }

    @Test
    void a_file_without_prefix_and_one_of_another_transfer_syntax_are_refused() throws IOException {
        Path text = Files.write(folder.resolve("text"), new byte[200]);
        assertThatThrownBy(() -> Files10.read(text)).hasMessageContaining("preamble and DICM");
        assertThatThrownBy(() -> TransferSyntax.of("1.2.840.10008.1.2.4.50"))
                .hasMessageContaining("is 1.2.840.10008.1.2.4.50; supported are");
    }

    @Test
    void a_bulk_value_is_written_from_its_source_and_read_as_an_offset() throws IOException {
        byte[] samples = new byte[200_000];
        new java.util.Random(5).nextBytes(samples);
        Path file = folder.resolve("bulk.dcm");
        Files10.write(file, EXPLICIT_VR_LITTLE_ENDIAN, withSamples(samples));
        try (var channel = FileChannel.open(file)) {
            DataSet back = Part10.read(channel, ReadLimits.DEFAULT).dataSet();
            Element data = item(back).element(Tag.WaveformData).orElseThrow();
            assertThat(data.value()).isInstanceOf(Value.Bulk.class);
            Path copy = folder.resolve("copy.dcm");
            Files10.write(copy, EXPLICIT_VR_LITTLE_ENDIAN, back);
            assertThat(copy).hasSameBinaryContentAs(file);
        }
        assertThat(item(Files10.read(file).dataSet()).bytes(Tag.WaveformData)).isEqualTo(samples);
    }

    @Test
    void a_head_takes_the_same_bytes_whatever_length_is_announced() throws IOException {
        byte[] samples = {1, 2, 3, 4};
        Path file = folder.resolve("announced.dcm");
        try (var channel = Files10.create(file)) {
            Part10.write(channel, EXPLICIT_VR_LITTLE_ENDIAN, announced(0));
            channel.write(ByteBuffer.wrap(samples));
            channel.position(0);
            Part10.write(channel, EXPLICIT_VR_LITTLE_ENDIAN, announced(samples.length));
        }
        assertThat(item(Files10.read(file).dataSet()).bytes(Tag.WaveformData)).isEqualTo(samples);
    }

    @Test
    void nothing_may_follow_an_announced_value() throws IOException {
        DataSet dataSet = announced(4).putEmpty(0x7FE0_0010);
        assertThatThrownBy(
                        () ->
                                Files10.write(
                                        folder.resolve("x"), EXPLICIT_VR_LITTLE_ENDIAN, dataSet))
                .hasMessageContaining("stands after a value still to come");
    }

    @Test
    void a_source_that_gives_less_than_it_announced_is_a_fault() throws IOException {
        DataSet dataSet = withBulk(new Zeros(10, 8));
        assertThatThrownBy(
                        () ->
                                Files10.write(
                                        folder.resolve("x"), EXPLICIT_VR_LITTLE_ENDIAN, dataSet))
                .hasMessage("(5400,1010) Waveform Data gave 8 of 10 bytes");
    }

    /** PS3.5 7.1.2 and 7.5: the longest OW, in a sequence whose own length no longer fits. */
    @Test
    void the_longest_value_is_streamed_inside_a_sequence_of_undefined_length() throws IOException {
        DataSet dataSet = withBulk(new Zeros(BulkValue.MAX, BulkValue.MAX));
        var sink = new CountingSink();
        new DataSetWriter(sink, EXPLICIT_VR_LITTLE_ENDIAN).write(dataSet);
        int delimiters = 16;
        assertThat(sink.count - BulkValue.MAX)
                .isEqualTo(length(withBulk(new Zeros(0, 0))) + delimiters);
    }

    private static long length(DataSet dataSet) throws IOException {
        var sink = new CountingSink();
        new DataSetWriter(sink, EXPLICIT_VR_LITTLE_ENDIAN).write(dataSet);
        return sink.count;
    }

    private static DataSet item(DataSet dataSet) {
        return dataSet.item(Tag.WaveformSequence).orElseThrow();
    }

    private static DataSet withSamples(byte[] samples) throws DicomException {
        return Samples.everything()
                .remove(Tag.WaveformData)
                .putItems(
                        Tag.WaveformSequence,
                        List.of(new DataSet().putBytes(Tag.WaveformData, Vr.OW, samples)));
    }

    private static DataSet announced(long length) throws DicomException {
        return withBulk(new AnnouncedBulk(length));
    }

    private static DataSet withBulk(BulkValue bulk) throws DicomException {
        return Samples.everything()
                .remove(Tag.WaveformData)
                .putItems(
                        Tag.WaveformSequence,
                        List.of(new DataSet().putBulk(Tag.WaveformData, Vr.OW, bulk)));
    }

    private record Zeros(long length, long given) implements BulkValue {

        @Override
        public void writeTo(WritableByteChannel target) throws IOException {
            var zeros = ByteBuffer.allocate(1 << 20);
            for (long left = given; left > 0; ) {
                zeros.clear().limit((int) Math.min(left, zeros.capacity()));
                left -= target.write(zeros);
            }
        }
    }

    private static final class CountingSink implements WritableByteChannel {

        private long count;

        @Override
        public int write(ByteBuffer source) {
            int bytes = source.remaining();
            source.position(source.limit());
            count += bytes;
            return bytes;
        }

        @Override
        public boolean isOpen() {
            return true;
        }

        @Override
        public void close() {
            // nothing is held
        }
    }
}

package dev.isoline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.dicom.waveform.MultiplexGroup;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.NonWritableChannelException;
import java.nio.channels.SeekableByteChannel;
import java.nio.channels.WritableByteChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** PS3.5 7.1.2: one value of 2^32-2 bytes is read and written in 64 MB. */
class LargestValueTest {

    private static final String DONE = "streamed in 64 MB";

    @Test
    void a_value_of_four_gigabytes_passes_through_a_heap_of_64_mb() throws Exception {
        var process =
                new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx64m",
                        "-cp",
                        place(DataSet.class) + File.pathSeparator + place(Streaming.class),
                        Streaming.class.getName());
        Process running = process.redirectErrorStream(true).start();
        String said = new String(running.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(running.waitFor(2, TimeUnit.MINUTES)).isTrue();
        assertThat(said.strip()).isEqualTo(DONE);
    }

    private static String place(Class<?> type) throws Exception {
        return Path.of(type.getProtectionDomain().getCodeSource().getLocation().toURI()).toString();
    }

    /** What runs in the small heap. */
    static final class Streaming {

        private static final long SAMPLES = BulkValue.MAX / 2;

        private Streaming() {}

        public static void main(String[] args) throws IOException {
            DataSet dataSet = Part10.read(new LargestFile(), ReadLimits.DEFAULT).dataSet();
            check(dataSet.element(Tag.WaveformData).orElseThrow().length() == BulkValue.MAX);
            var sink = new Counting();
            new DataSetWriter(sink, TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN).write(dataSet);
            check(sink.count > BulkValue.MAX);
            int[][] last = MultiplexGroup.of(dataSet).samples(SAMPLES - 2, 2);
            check(last[0][0] == 0x0101 && last[0][1] == 0x0101);
            System.out.println(DONE);
        }

        private static void check(boolean held) {
            if (!held) {
                throw new IllegalStateException("not as written");
            }
        }

        private static DataSet object() throws DicomException {
            return new DataSet()
                    .putText(Tag.SOPClassUID, "1.2.840.10008.5.1.4.1.1.9.1.3")
                    .putText(Tag.SOPInstanceUID, "2.25.1")
                    .putInts(Tag.NumberOfWaveformChannels, 1)
                    .putInts(Tag.NumberOfWaveformSamples, SAMPLES)
                    .putNumbers(Tag.SamplingFrequency, 1000)
                    .putItems(Tag.ChannelDefinitionSequence, List.of(new DataSet()))
                    .putInts(Tag.WaveformBitsAllocated, 16)
                    .putText(Tag.WaveformSampleInterpretation, "SS")
                    .putBulk(Tag.WaveformData, Vr.OW, new AnnouncedBulk(BulkValue.MAX));
        }
    }

    /** A real head and samples of 0101H behind it; a sparse file costs seconds of page cache. */
    private static final class LargestFile implements SeekableByteChannel {

        private static final byte[] SAMPLES = new byte[1 << 16];

        static {
            Arrays.fill(SAMPLES, (byte) 1);
        }

        private final byte[] head;
        private long position;

        LargestFile() throws IOException {
            var bytes = new ByteArrayOutputStream();
            var channel = Channels.newChannel(bytes);
            Part10.write(channel, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN, Streaming.object());
            head = bytes.toByteArray();
        }

        @Override
        public int read(ByteBuffer target) {
            long left = size() - position;
            if (left <= 0) {
                return -1;
            }
            boolean inHead = position < head.length;
            byte[] from = inHead ? head : SAMPLES;
            int at = inHead ? (int) position : 0;
            int count = (int) Math.min(Math.min(target.remaining(), from.length - at), left);
            target.put(from, at, count);
            position += count;
            return count;
        }

        @Override
        public long size() {
            return head.length + BulkValue.MAX;
        }

        @Override
        public long position() {
            return position;
        }

        @Override
        public SeekableByteChannel position(long newPosition) {
            position = newPosition;
            return this;
        }

        @Override
        public int write(ByteBuffer source) {
            throw new NonWritableChannelException();
        }

        @Override
        public SeekableByteChannel truncate(long size) {
            throw new NonWritableChannelException();
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

    private static final class Counting implements WritableByteChannel {

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

package dev.isoline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import dev.isoline.dicom.json.BulkDataNames;
import dev.isoline.dicom.json.BulkDataSource;
import dev.isoline.dicom.json.DicomJsonReader;
import dev.isoline.dicom.json.DicomJsonWriter;
import dev.isoline.dicom.waveform.MultiplexGroup;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.nio.channels.Channels;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * 40,000 mutated Part 10 files, 25,000 data sets and 5,000 texts of JSON, of a fixed seed, end in a
 * data set or a {@link DicomException}, never otherwise, in bounded time and memory. What was read
 * is also asked for its values and written. PDUs and streams of them have tests of their own.
 */
class FuzzTest {

    private static final int PART_10 = 40_000;
    private static final int DATA_SETS_OF_A_SYNTAX = 12_500;
    private static final int JSON = 5_000;

    private static final Duration LONGEST = Duration.ofSeconds(5);
    private static final long MOST_MEMORY = 64L << 20;
    private static final ReadLimits LIMITS = new ReadLimits(16, 5_000, 64, 1 << 20);

    private static final Set<Vr> NUMBERS =
            EnumSet.of(Vr.DS, Vr.IS, Vr.US, Vr.SS, Vr.UL, Vr.SL, Vr.FL, Vr.FD, Vr.AT, Vr.UN);

    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    /** Reads one input and does with it what a user would. */
    private interface Judge {
        void judge(byte[] input) throws IOException;
    }

    private static void fuzz(List<byte[]> seeds, int count, Judge judge) throws IOException {
        var mutation = new Mutation(20261125);
        int refused = 0;
        for (int i = 0; i < count; i++) {
            byte[] input = mutation.of(seeds.get(i % seeds.size()));
            refused += refuses(input, judge, i) ? 1 : 0;
        }
        assertThat(refused).isBetween(count / 50, count - count / 50);
    }

    private static boolean refuses(byte[] input, Judge judge, int number) throws IOException {
        long start = System.nanoTime();
        long allocated = THREADS.getCurrentThreadAllocatedBytes();
        try {
            judge.judge(input);
            return false;
        } catch (DicomException expected) {
            assertThat(expected.getMessage()).isNotBlank();
            return true;
        } catch (RuntimeException | Error unexpected) {
            throw new AssertionError(
                    "input " + number + ": " + HexFormat.of().formatHex(input), unexpected);
        } finally {
            assertThat(System.nanoTime() - start).isLessThan(LONGEST.toNanos());
            assertThat(THREADS.getCurrentThreadAllocatedBytes() - allocated)
                    .isLessThan(MOST_MEMORY);
        }
    }

    @Test
    void part_10_files() throws IOException {
        var seeds = new ArrayList<byte[]>();
        for (TransferSyntax syntax : TransferSyntax.values()) {
            for (DataSet dataSet : dataSets()) {
                var file = new ByteArrayOutputStream();
                Part10.write(Channels.newChannel(file), syntax, dataSet);
                seeds.add(file.toByteArray());
            }
        }
        fuzz(seeds, PART_10, input -> use(Part10.read(new BytesChannel(input), LIMITS).dataSet()));
    }

    @ParameterizedTest
    @EnumSource(TransferSyntax.class)
    void data_sets(TransferSyntax syntax) throws IOException {
        var seeds = new ArrayList<byte[]>();
        for (DataSet dataSet : dataSets()) {
            var bytes = new ByteArrayOutputStream();
            new DataSetWriter(Channels.newChannel(bytes), syntax).write(dataSet);
            seeds.add(bytes.toByteArray());
        }
        seeds.add(HexFormat.of().parseHex(UNDEFINED_LENGTHS.get(syntax.ordinal())));
        fuzz(
                seeds,
                DATA_SETS_OF_A_SYNTAX,
                input -> {
                    use(DataSetReader.read(input, syntax, LIMITS));
                    streamed(syntax, input);
                });
    }

    /** A stream has no size to cap lengths against. */
    private static void streamed(TransferSyntax syntax, byte[] input) throws IOException {
        var stream = Channels.newChannel(new ByteArrayInputStream(input));
        BulkStore forgetting =
                (tag, length, bytes) -> {
                    bytes.read(java.nio.ByteBuffer.allocate((int) Math.min(length, 1024)));
                    return new AnnouncedBulk(length);
                };
        DataSetReader.read(stream, syntax, LIMITS, forgetting);
    }

    @Test
    void json() throws IOException {
        var seeds = new ArrayList<byte[]>();
        for (DataSet dataSet : dataSets()) {
            var json = new ByteArrayOutputStream();
            new DicomJsonWriter(json, BulkDataNames.NONE).write(dataSet);
            seeds.add(json.toByteArray());
        }
        fuzz(
                seeds,
                JSON,
                input ->
                        use(
                                DicomJsonReader.read(
                                        new ByteArrayInputStream(input),
                                        LIMITS,
                                        BulkDataSource.NONE)));
    }

    private static final List<String> UNDEFINED_LENGTHS =
            List.of(
                    "00540001"
                            + "ffffffff"
                            + "feff00e0"
                            + "ffffffff"
                            + "3a000500"
                            + "02000000"
                            + "0300"
                            + "feff0de0"
                            + "00000000"
                            + "feff00e0"
                            + "00000000"
                            + "feffdde0"
                            + "00000000"
                            + "00541010"
                            + "02000000"
                            + "0100",
                    "00540001"
                            + "53510000"
                            + "ffffffff"
                            + "feff00e0"
                            + "ffffffff"
                            + "3a000500"
                            + "55530200"
                            + "0300"
                            + "feff0de0"
                            + "00000000"
                            + "feffdde0"
                            + "00000000"
                            + "09001010"
                            + "554e0000"
                            + "ffffffff"
                            + "feff00e0"
                            + "0a000000"
                            + "3a000500"
                            + "02000000"
                            + "0300"
                            + "feffdde0"
                            + "00000000");

    private static List<DataSet> dataSets() throws DicomException {
        var channel =
                new DataSet()
                        .putText(Tag.ChannelSensitivity, "2.5")
                        .putItems(
                                Tag.ChannelSensitivityUnitsSequence,
                                List.of(new DataSet().putText(Tag.CodeValue, "uV")));
        var group =
                new DataSet()
                        .putInts(Tag.NumberOfWaveformChannels, 1)
                        .putInts(Tag.NumberOfWaveformSamples, 50)
                        .putText(Tag.SamplingFrequency, "250")
                        .putItems(Tag.ChannelDefinitionSequence, List.of(channel))
                        .putInts(Tag.WaveformBitsAllocated, 16)
                        .putText(Tag.WaveformSampleInterpretation, "SS")
                        .putBytes(Tag.WaveformPaddingValue, Vr.OW, new byte[] {0, -128})
                        .putBytes(Tag.WaveformData, Vr.OW, new byte[100]);
        var waveform =
                new DataSet()
                        .putText(Tag.SpecificCharacterSet, "ISO_IR 100")
                        .putText(Tag.SOPClassUID, "1.2.840.10008.5.1.4.1.1.9.1.3")
                        .putText(Tag.SOPInstanceUID, "2.25.1")
                        .putText(Tag.PatientName, "Grün^A=B")
                        .putItems(Tag.WaveformSequence, List.of(group));
        return List.of(Samples.everything(), waveform);
    }

    private static void use(DataSet dataSet) throws IOException {
        values(dataSet);
        write(
                out ->
                        new DataSetWriter(
                                        Channels.newChannel(out),
                                        TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN)
                                .write(dataSet));
        write(
                out ->
                        new DataSetWriter(
                                        Channels.newChannel(out),
                                        TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN)
                                .write(dataSet));
        write(out -> new DicomJsonWriter(out, BulkDataNames.NONE).write(dataSet));
        for (DataSet item : dataSet.items(Tag.WaveformSequence)) {
            write(out -> waveform(item));
        }
    }

    private static void waveform(DataSet item) throws IOException {
        MultiplexGroup group = MultiplexGroup.of(item);
        group.values(0, (int) Math.min(group.samples(), 1000));
    }

    private static void values(DataSet dataSet) throws IOException {
        for (Element element : dataSet.elements()) {
            if (element.vr().isText() || element.vr() == Vr.UN) {
                write(out -> dataSet.texts(element.tag()));
            }
            if (NUMBERS.contains(element.vr())) {
                write(out -> dataSet.ints(element.tag()));
                write(out -> dataSet.numbers(element.tag()));
            }
            for (DataSet item : element.items()) {
                values(item);
            }
        }
    }

    private interface Use {
        void with(OutputStream out) throws IOException;
    }

    /** A value may be refused when it is asked for. */
    private static void write(Use use) throws IOException {
        try {
            use.with(OutputStream.nullOutputStream());
        } catch (DicomException refused) {
            assertThat(refused.getMessage()).isNotBlank();
        }
    }
}

package dev.isoline.ecg.wfdb;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.Damage;
import dev.isoline.ecg.FilesInMemory;
import dev.isoline.ecg.Samples;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Bytes worked out by hand from the descriptions in signal(5) of the WFDB Applications Guide,
 * format by format; the most negative value of a format stands for no sample (signal(5), wfdb.h).
 */
class WfdbFormatTest {

    // spotless:off
    @ParameterizedTest(name = "format {0}: {1}")
    @CsvSource(delimiter = '|', value = {
        " 16 | 0100 ffff ff7f 0080      | 1 -1 32767 M",
        // least significant byte first, sign in the third
        " 24 | 010000 ffffff 563412 ffff7f 000080 | 1 -1 1193046 8388607 M",
        " 32 | 01000000 ffffffff 78563412 00000080 | 1 -1 305419896 M",
        " 61 | 0001 ffff 7fff 8000      | 1 -1 32767 M",
        // 128 is subtracted
        " 80 | 81 7f ff 00              | 1 -1 127 M",
        // 32,768 is subtracted from the pair
        "160 | 0180 ff7f ffff 0000      | 1 -1 32767 M",
        // 0x123 and 0x456; -1 and 0; -2048 and 5
        "212 | 23 41 56  ff 0f 00  00 08 05 | 291 1110 -1 0 M 5",
        // an odd sample at the end takes two bytes
        "212 | 23 41 56  05 00          | 291 1110 5",
        // pairs 0x0802 and 0x1004: 1, 2, and 0b00010_00001 = 65
        "310 | 0208 0410                | 1 2 65",
        // pairs 0xffff and 0xffff; pair 0x07fe = -1 with an upper part of 0
        "310 | ffff ffff  fe07 0004     | -1 -1 -1 -1 M 0",
        // one and two samples at the end take a pair each
        "310 | 0208 0410 0600           | 1 2 65 3",
        "310 | 0208 0410 0600 0800      | 1 2 65 3 4",
        // 3<<20 | 2<<10 | 1 = 0x00300801
        "311 | 01083000                 | 1 2 3",
        // ten bits each, all ones; 0x200 in the middle
        "311 | ffffff3f 00000800        | -1 -1 -1 0 M 0",
        // one sample at the end reaches into two bytes, two into three
        "311 | 01083000 0500            | 1 2 3 5",
        "311 | 01083000 051800          | 1 2 3 5 6"})
    // spotless:on
    void bytes_are_samples_as_signal_5_describes_them(int format, String hex, String samples)
            throws IOException {
        var bytes = HexFormat.of().parseHex(hex.replace(" ", ""));
        var expected = samples.replace("M", String.valueOf(Block.MISSING)).split(" ");
        var header = "r 1 250 " + expected.length + "\nr.dat " + format + " 200 0 0 0";
        var files =
                new FilesInMemory(
                        Map.of("r.hea", header.getBytes(StandardCharsets.UTF_8), "r.dat", bytes));
        try (var recording = WfdbRecording.open(files, "r.hea", Damage.REFUSE)) {
            assertThat(Samples.lead(recording, 0))
                    .containsExactly(Arrays.stream(expected).mapToInt(Integer::parseInt).toArray());
            assertThat(recording.header().format()).isEqualTo("WFDB " + format);
        }
    }
}

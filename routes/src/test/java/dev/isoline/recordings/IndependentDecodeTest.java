package dev.isoline.recordings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.format.RecordingFormats;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Samples equal those a few lines of numpy read, to the last one. */
class IndependentDecodeTest {

    @TempDir Path folder;

    private static final String SCRIPT = "src/test/resources/recordings/independent-decode.py";

    private static Recording open(String path) throws IOException {
        return RecordingFormats.open(RecordingPlace.files(OutsideTools.shared("data/ecg/" + path)));
    }

    @ParameterizedTest(name = "{1}")
    @CsvSource({
        "edf, edf/derived-mitdb100-5min-edfplusC.edf, edf/derived-mitdb100-5min-edfplusC.edf, 3",
        "edf, edf/derived-mitdb201-5min-edfplusD-2gaps.edf, edf/derived-mitdb201-5min-edfplusD-2gaps.edf, 3",
        "edf, edf/pyedflib-test_utf8.edf, edf/pyedflib-test_utf8.edf, 2",
        "edf, edf/pyedflib-test_subsecond.edf, edf/pyedflib-test_subsecond.edf, 2",
        "212, mitdb/100.hea, mitdb/100.dat, 2",
        "212, mitdb/228.hea, mitdb/228.dat, 2",
        "212, wfdb/v102s.hea, wfdb/v102s.dat, 4",
        "16, wfdb/test01_00s.hea, wfdb/test01_00s.dat, 4"
    })
    void first_lead(String format, String recording, String signal, String signals)
            throws Exception {
        var file = OutsideTools.shared("data/ecg/" + signal).toString();
        assumeTrue(Files.size(Path.of(file)) > 0, "the test material is not whole: " + signal);
        var expected = OutsideTools.python(List.of(SCRIPT, format, file, signals)).strip();
        try (var opened = open(recording)) {
            assertThat(digest(opened)).isEqualTo(expected);
        }
    }

    private static String digest(Recording recording) throws IOException, NoSuchAlgorithmException {
        var sha256 = MessageDigest.getInstance("SHA-256");
        long count = 0;
        for (var block : blocks(recording)) {
            var bytes = ByteBuffer.allocate(2 * block.length()).order(ByteOrder.LITTLE_ENDIAN);
            for (int sample : block.samples()[0]) {
                bytes.putShort((short) (sample == Block.MISSING ? -2048 : sample)); // format 212
            }
            sha256.update(bytes.array());
            count += block.length();
        }
        return count + " " + HexFormat.of().formatHex(sha256.digest());
    }

    private static List<Block> blocks(Recording recording) throws IOException {
        var blocks = new ArrayList<Block>();
        for (var next = recording.next(); next.isPresent(); next = recording.next()) {
            blocks.add(next.get());
        }
        return blocks;
    }

    @Test
    void checksums_of_whole_records_agree_with_their_headers() throws IOException {
        for (var record : List.of("mitdb/100.hea", "wfdb/test01_00s.hea", "wfdb/100_3chan.hea")) {
            try (var opened = open(record)) {
                blocks(opened);
                assertThat(opened.header().notes()).as(record).isEmpty();
            }
        }
    }

    /** A skewed signal, one of two samples a frame: sums as header(5) defines them. */
    @Test
    void checksums_are_of_the_samples_as_stored() throws IOException {
        try (var opened = open("wfdb/test01_00s_skewframe.hea");
                var plain = open("wfdb/test01_00s.hea")) {
            var samples = blocks(opened).get(0).samples();
            assertThat(opened.header().notes()).noneMatch(note -> note.contains("checksum"));
            assertThat(samples[0][0]).isEqualTo(blocks(plain).get(0).samples()[0][3]);
        }
    }

    /** Headers that name a signal file of another folder. */
    @ParameterizedTest
    @CsvSource({"100skew, 3", "100-no-len, 0"})
    void odd_headers_of_record_100_give_its_samples(String name, int skew) throws IOException {
        Files.copy(
                OutsideTools.shared("data/ecg/wfdb/" + name + ".hea"),
                folder.resolve(name + ".hea"));
        Files.createSymbolicLink(
                folder.resolve("100.dat"), OutsideTools.shared("data/ecg/mitdb/100.dat"));
        var files = RecordingPlace.files(folder.resolve(name + ".hea"));
        try (var opened = RecordingFormats.open(files);
                var plain = open("mitdb/100.hea")) {
            var odd = blocks(opened).get(0).samples();
            var samples = blocks(plain).get(0).samples();
            assertThat(opened.header().samples()).isEqualTo(650_000);
            assertThat(odd[0]).startsWith(Arrays.copyOf(samples[0], 1000));
            assertThat(odd[1]).startsWith(Arrays.copyOfRange(samples[1], skew, 1000));
        }
    }

    /** All were made of the first five minutes of record 100, at 5 microvolts a unit. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "ishne/derived-mitdb100-5min.ecg",
                "dicom/own-amb-zero-baseline.dcm",
                "dicom/own-amb-mV-corr.dcm"
            })
    void record_100_is_the_same_in_another_format(String path) throws IOException {
        try (var opened = open(path);
                var plain = open("mitdb/100.hea")) {
            assertThat(opened.header().samples()).isEqualTo(108_000);
            var lead = opened.header().leads().get(0);
            var samples = blocks(opened).get(0).samples()[0];
            var stored = blocks(plain).get(0).samples()[0];
            for (int i = 0; i < Math.min(samples.length, stored.length); i++) {
                assertThat(lead.microvolts(samples[i]))
                        .isCloseTo((stored[i] - 1024) * 5.0, within(1e-6));
            }
        }
    }

    @Test
    void the_gaps_of_37_and_3600_seconds_of_the_EDF_D_file_are_in_their_places()
            throws IOException {
        try (var opened = open("edf/derived-mitdb201-5min-edfplusD-2gaps.edf")) {
            long end = 0;
            var gaps = new ArrayList<Long>();
            for (var block : blocks(opened)) {
                if (block.first() != end) {
                    gaps.add(end);
                    gaps.add(block.first() - end);
                }
                end = block.end();
            }
            assertThat(gaps).containsExactly(60 * 360L, 37 * 360L, (200 + 37) * 360L, 3600 * 360L);
        }
    }

    @Test
    void a_fraction_of_the_start_second_is_kept() throws IOException {
        try (var opened = open("edf/pyedflib-test_subsecond.edf")) {
            assertThat(opened.header().start().orElseThrow().getNano()).isEqualTo(394_531_200);
        }
    }
}

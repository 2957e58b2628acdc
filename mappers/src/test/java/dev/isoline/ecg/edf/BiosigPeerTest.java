package dev.isoline.ecg.edf;

import static java.time.temporal.ChronoUnit.MILLIS;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.ecg.Damage;
import dev.isoline.ecg.FilesInMemory;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.Samples;
import dev.isoline.ecg.ishne.IshneBytes;
import dev.isoline.ecgdicom.Checkers;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What libbiosig (Debian biosig-tools) reads of files of these formats is what is read here: of EDF
 * and BDF header and samples, of ISHNE the header, for version 2.5.0 drops the end of its samples.
 */
class BiosigPeerTest {

    @TempDir Path folder;

    @Test
    void edf_is_read_alike() throws Exception {
        var random = new Random(1);
        var edf = new EdfBytes();
        edf.reserved = "";
        edf.signal("ECG II", "uV", 100, "-5000", "5000", "-2048", "2047")
                .signal("ECG V5", "mV", 100, "-10", "10", "-32768", "32767");
        for (int record = 0; record < 5; record++) {
            edf.samples(samples(random, 100, 2047))
                    .samples(samples(random, 100, 32767))
                    .endRecord();
        }
        isReadAlike(edf, "EDF");
    }

    @Test
    void bdf_is_read_alike() throws Exception {
        var random = new Random(2);
        var bdf = EdfBytes.bdf();
        bdf.reserved = "24BIT";
        bdf.signal("ECG II", "uV", 200, "-262144", "262143", "-8388608", "8388607");
        for (int record = 0; record < 3; record++) {
            bdf.samples(samples(random, 200, 8388607)).endRecord();
        }
        isReadAlike(bdf, "BDF");
    }

    private void isReadAlike(EdfBytes file, String type) throws Exception {
        var source = Files.write(folder.resolve("in." + type), file.bytes());
        var json = Checkers.save2gdf("-JSON", source, folder.resolve("out.gdf"));
        var csv = folder.resolve("out.csv");
        Checkers.save2gdf("-CSV", source, csv);
        var values = Files.readAllLines(csv);
        try (var recording =
                EdfRecording.open(FilesInMemory.of("r", file.bytes()), "r", Damage.REFUSE)) {
            var header = recording.header();
            assertThat(number(json, "Samplingrate")).isEqualTo(header.hz());
            assertThat(number(json, "NumberOfChannels")).isEqualTo(header.leads().size());
            assertThat(number(json, "NumberOfSamples")).isEqualTo(header.samples());
            assertThat(json).contains("\"TYPE\"\t: \"" + type + "\"").contains("ECG II");
            assertThat(start(json)).isCloseTo(header.start().orElseThrow(), within(1, MILLIS));
            equal(values, header.leads(), file);
        }
    }

    /** The CSV has a line of names, then physical values of all channels in their unit. */
    private static void equal(List<String> lines, List<Lead> leads, EdfBytes file)
            throws IOException {
        var rows = lines.stream().filter(line -> line.matches("[-\\d.].*")).toList();
        for (int lead = 0; lead < leads.size(); lead++) {
            try (var recording =
                    EdfRecording.open(FilesInMemory.of("r", file.bytes()), "r", Damage.REFUSE)) {
                int[] samples = Samples.lead(recording, lead);
                assertThat(rows).hasSameSizeAs(Arrays.stream(samples).boxed().toList());
                double unit = lead == 0 ? 1 : 1000;
                for (int i = 0; i < samples.length; i++) {
                    double value = Double.parseDouble(rows.get(i).split("[,\\s]+")[lead]) * unit;
                    double ours = leads.get(lead).microvolts(samples[i]);
                    assertThat(value).isCloseTo(ours, within(Math.abs(ours) * 1e-5 + 1e-6));
                }
            }
        }
    }

    @Test
    void the_header_of_ishne_is_read_alike() throws Exception {
        var file = new IshneBytes().data(samples(new Random(3), 2000, 32000));
        var source = Files.write(folder.resolve("in.ecg"), file.file());
        var json = Checkers.save2gdf("-JSON", source, folder.resolve("out.gdf"));
        assertThat(number(json, "Samplingrate")).isEqualTo(250);
        assertThat(number(json, "NumberOfChannels")).isEqualTo(2);
        assertThat(start(json))
                .isCloseTo(LocalDateTime.of(2026, 10, 24, 9, 30, 15), within(1, MILLIS));
        assertThat(json).contains("Female").contains("P-17");
    }

    private static int[] samples(Random random, int count, int largest) {
        return random.ints(count, -largest, largest + 1).toArray();
    }

    /** It keeps times as a fraction of a day. */
    private static LocalDateTime start(String json) {
        var matcher = Pattern.compile("\"StartOfRecording\"\\s*: \"([^\"]+)\"").matcher(json);
        assertThat(matcher.find()).isTrue();
        return LocalDateTime.parse(matcher.group(1).replace(' ', 'T'));
    }

    private static double number(String json, String name) {
        var matcher = Pattern.compile("\"" + name + "\"\\s*: ([-\\d.]+)").matcher(json);
        assertThat(matcher.find()).as(name + " in " + json).isTrue();
        return Double.parseDouble(matcher.group(1));
    }
}

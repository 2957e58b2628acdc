package dev.isoline.ecg.edf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.Damage;
import dev.isoline.ecg.DiaryEntry;
import dev.isoline.ecg.FilesInMemory;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.Samples;
import dev.isoline.ecg.format.RecordingFormats;
import java.io.IOException;
import org.junit.jupiter.api.Test;

/**
 * BDF ("BDF file format", BioSemi): EDF with another first field and samples of 24 bits; BDF+ keeps
 * its annotations in signals labelled {@code BDF Annotations}.
 */
class BdfRecordingTest {

    private static EdfBytes bdf() {
        return EdfBytes.bdf()
                .signal("ECG II", "uV", 2, "-262144", "262143", "-8388608", "8388607")
                .signal("Status", "Boolean", 2, "-8388608", "8388607", "-8388608", "8388607");
    }

    private static Recording open(EdfBytes file) throws IOException {
        return RecordingFormats.open(FilesInMemory.of("r", file.bytes()), Damage.REFUSE);
    }

    @Test
    void samples_of_24_bits_are_read_to_the_ends_of_their_range() throws IOException {
        var file =
                bdf().samples(1, -1, 0, 0).endRecord().samples(8388607, -8388608, 0, 0).endRecord();
        file.reserved = "24BIT";
        try (var recording = open(file)) {
            var lead = recording.header().leads().get(0);
            assertThat(recording.header().format()).isEqualTo("BDF");
            assertThat(recording.header().leads()).extracting(Lead::label).containsExactly("II");
            assertThat(lead.bitsStored()).isEqualTo(24);
            assertThat(lead.microvolts(-8388608)).isEqualTo(-262144);
            assertThat(lead.microvolts(8388607)).isCloseTo(262143, within(1e-6));
            assertThat(Samples.lead(recording, 0)).containsExactly(1, -1, 8388607, -8388608);
        }
    }

    @Test
    void annotations_and_gaps_of_BDF_D_are_those_of_EDF_D() throws IOException {
        var file =
                bdf().annotations(10)
                        .samples(1, 2, 0, 0)
                        .text("+0\u0014\u0014\0+0.5\u0014up\u0014\0", 10)
                        .endRecord()
                        .samples(3, 4, 0, 0)
                        .text("+10.5\u0014\u0014\0", 10)
                        .endRecord();
        file.reserved = "BDF+D";
        try (var recording = open(file)) {
            assertThat(Samples.blocks(recording)).extracting(Block::first).containsExactly(0L, 21L);
            assertThat(recording.diary()).containsExactly(new DiaryEntry(1, 0, "up"));
        }
    }
}

package dev.isoline.conformance.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.conformance.IndependentReader;
import dev.isoline.synth.EdfIdentity;
import dev.isoline.synth.EdfPlusWriter;
import dev.isoline.synth.RecordingFile;
import dev.isoline.synth.Synthesiser;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Read back by numpy, field by field as the EDF+ specification (2.1, 2.2) places them. */
class EdfPlusWriterTest {

    private static final EdfIdentity IDENTITY =
            new EdfIdentity(
                    "MRN 1",
                    "F",
                    LocalDate.of(1951, 5, 2),
                    "Haagse Harriet",
                    "HB-1",
                    LocalDateTime.of(2026, 11, 2, 9, 30));

    @Test
    void an_independent_reader_finds_the_identity_the_calibration_and_every_sample(
            @TempDir Path folder) throws Exception {
        Path edf = folder.resolve("r.edf");
        Path raw = folder.resolve("r.raw");
        RecordingFile.edfPlus(
                new Synthesiser(SamplePlans.ECTOPIC), SamplePlans.ECTOPIC, IDENTITY, edf, raw);
        assertThat(IndependentReader.run("read_edf.py", edf, raw))
                .isEqualTo(
                        "EDF+C|MRN_1 F 02-MAY-1951 Haagse_Harriet"
                                + "|Startdate 02-NOV-2026 HB-1 X Synthesiser"
                                + "|EDF Annotations|5.0|True|True");
    }

    @Test
    void fewer_samples_than_the_header_promises_are_an_error() throws Exception {
        var writer = new EdfPlusWriter(SamplePlans.ECTOPIC, IDENTITY, new ByteArrayOutputStream());
        writer.frame(new int[] {1, 2});
        assertThatThrownBy(writer::close).hasMessageContaining("promises 60 records, got 0");
    }
}

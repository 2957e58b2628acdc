package dev.isoline.conformance.validator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.conformance.IndependentReader;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WaveformReaderTest {

    @Test
    void samples_and_calibration_are_what_pydicom_reads(@TempDir Path folder) throws Exception {
        IndependentReader.needs("pydicom, numpy");
        Path dcm = folder.resolve("ecg.dcm");
        // two channels, samples 1 -2 / 3 -4 / 300 -400, 5 uV a unit (PS3.3 C.10.9)
        IndependentReader.run("write_ecg.py", dcm);
        Waveform waveform = new WaveformReader().read(dcm, 5);
        assertThat(waveform.groups()).isEqualTo(1);
        assertThat(waveform.channels()).isEqualTo(2);
        assertThat(waveform.samples()).isEqualTo(3);
        assertThat(waveform.hz()).isEqualTo(250);
        assertThat(waveform.stored())
                .containsExactly(1, 0, -2, 255, 3, 0, -4, 255, 44, 1, 112, 254);
        assertThat(waveform.microvoltsOff()).isZero();
        assertThat(new WaveformReader().read(dcm, 4).microvoltsOff()).isCloseTo(400, within(1e-9));
    }
}

package dev.isoline.dicom;

import static dev.isoline.dicom.TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
import static dev.isoline.dicom.TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Broken and malicious input ends in a {@link DicomException} that names a tag, never otherwise.
 */
class HostileInputTest {

    @TempDir Path folder;

    private DataSet read(TransferSyntax syntax, String hex) throws IOException {
        return Files10.read(folder, syntax, HexFormat.of().parseHex(hex.replace(" ", "")));
    }

    @Test
    void a_length_beyond_the_end_is_refused() {
        assertThatThrownBy(
                        () -> read(EXPLICIT_VR_LITTLE_ENDIAN, "00541010 4f57 0000 feffffff 0100"))
                .hasMessage(
                        "(5400,1010) Waveform Data has a length of 4294967294 bytes, more than are left");
    }

    @Test
    void an_item_longer_than_its_sequence_is_refused() {
        assertThatThrownBy(
                        () ->
                                read(
                                        IMPLICIT_VR_LITTLE_ENDIAN,
                                        "00540001 08000000 feff00e0 08000000 3a000500 02000000 0300"))
                .hasMessageStartingWith("(5400,0100) Waveform Sequence has a length of 8 bytes");
    }

    @Test
    void endless_nesting_is_refused() {
        String deeper = "00540001 ffffffff feff00e0 ffffffff";
        assertThatThrownBy(() -> read(IMPLICIT_VR_LITTLE_ENDIAN, deeper.repeat(100_000)))
                .hasMessage("(5400,0100) Waveform Sequence is nested deeper than 64");
    }

    @Test
    void too_many_elements_and_too_much_memory_are_refused() throws IOException {
        byte[] bytes = Files10.bytes(folder, EXPLICIT_VR_LITTLE_ENDIAN, Samples.everything());
        Path file = Files.write(folder.resolve("x"), bytes);
        assertThatThrownBy(() -> limited(file, new ReadLimits(9, 5, 100, 1000)))
                .hasMessageContaining("exceeds the limit of 5");
        assertThatThrownBy(() -> limited(file, new ReadLimits(9, 500, 100, 20)))
                .hasMessageContaining("exceeds the limit of bytes held in memory");
    }

    private static void limited(Path file, ReadLimits limits) throws IOException {
        try (var channel = FileChannel.open(file)) {
            DataSetReader.read(channel, EXPLICIT_VR_LITTLE_ENDIAN, limits);
        }
    }

    @Test
    void an_element_that_stands_twice_is_refused() {
        String id = "10002000 02000000 4131";
        assertThatThrownBy(() -> read(IMPLICIT_VR_LITTLE_ENDIAN, id + id))
                .hasMessage("(0010,0020) Patient ID stands twice in one data set");
    }
}

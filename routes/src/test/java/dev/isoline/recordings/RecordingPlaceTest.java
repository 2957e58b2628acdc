package dev.isoline.recordings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.format.RecordingFormats;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files, folders and archives of recordings, real ones on disk. */
class RecordingPlaceTest {

    private static final byte[] HEADER =
            "a 1 360 2\na.dat 16\n".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] SIGNAL = {1, 0, 2, 0};

    @TempDir Path folder;

    private Path zip(String... names) throws IOException {
        var path = folder.resolve("upload");
        try (var zip = new ZipOutputStream(Files.newOutputStream(path))) {
            for (String name : names) {
                zip.putNextEntry(new ZipEntry(name));
                zip.write(name.endsWith(".hea") ? HEADER : SIGNAL);
            }
        }
        return path;
    }

    private static long samples(Path place) throws IOException {
        try (var recording = RecordingFormats.open(RecordingPlace.files(place))) {
            return recording.next().orElseThrow().length();
        }
    }

    @Test
    void a_zip_is_read_without_unpacking_and_folders_in_it_are_flattened() throws IOException {
        assertThat(samples(zip("day1/a.hea", "day1/a.dat", "__MACOSX/._a.dat"))).isEqualTo(2);
    }

    @Test
    void a_file_in_a_zip_can_be_opened_again() throws IOException {
        var files = RecordingPlace.files(zip("a.hea", "a.dat"));
        for (int i = 0; i < 2; i++) {
            try (var stream = Channels.newInputStream(files.open("a.dat"))) {
                assertThat(stream.readAllBytes()).isEqualTo(SIGNAL);
            }
        }
    }

    @Test
    void a_folder_and_a_header_among_its_siblings_are_read() throws IOException {
        Files.write(folder.resolve("a.hea"), HEADER);
        Files.write(folder.resolve("a.dat"), SIGNAL);
        assertThat(samples(folder)).isEqualTo(2);
        Files.write(folder.resolve("b.hea"), HEADER);
        assertThat(samples(folder.resolve("a.hea"))).isEqualTo(2);
    }

    @Test
    void a_zip_that_names_a_place_outside_itself_is_refused() throws IOException {
        refused(zip("../a.hea", "a.dat"), "outside itself");
    }

    @Test
    void a_zip_with_two_files_of_one_name_is_refused() throws IOException {
        refused(zip("x/a.hea", "y/a.hea"), "two files of one name");
    }

    @Test
    void a_zip_without_a_header_is_refused() throws IOException {
        refused(zip("a.dat"), "begins neither");
        refused(zip("a.dat", "b.dat"), "None of the files");
        refused(zip(), "None of the files");
    }

    @Test
    void a_damaged_zip_is_refused() throws IOException {
        var whole = Files.readAllBytes(zip("a.hea", "a.dat"));
        Files.write(folder.resolve("upload"), Arrays.copyOf(whole, whole.length - 30));
        refused(folder.resolve("upload"), "damaged");
    }

    @Test
    void a_zip_that_grows_out_of_proportion_is_refused() throws IOException {
        var path = folder.resolve("bomb");
        try (var zip = new ZipOutputStream(Files.newOutputStream(path))) {
            zip.putNextEntry(new ZipEntry("a.dat"));
            var zeros = new byte[1 << 20];
            for (int i = 0; i < 32; i++) {
                zip.write(zeros);
            }
        }
        refused(path, "more than a recording could need");
    }

    private static void refused(Path place, String says) {
        assertThatThrownBy(() -> samples(place))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining(says);
    }
}

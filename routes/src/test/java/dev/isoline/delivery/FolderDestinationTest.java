package dev.isoline.delivery;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.delivery.Verdict.Outcome;
import dev.isoline.ledger.DeliveryTable.NewDelivery;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FolderDestinationTest {

    private static final String NAME = "2.25.1234.dcm";

    @TempDir Path data;
    @TempDir Path temporary;
    private Path archive;

    @BeforeEach
    void start() throws IOException {
        archive = temporary.resolve("archive");
        Files.createDirectories(data.resolve("objects"));
        Files.writeString(data.resolve("objects").resolve(NAME), "content");
    }

    @Test
    void a_file_is_copied_under_its_own_name_and_nothing_else_is_left() throws Exception {
        assertThat(sent("objects/" + NAME)).isEqualTo(Verdict.delivered("copied, 7 bytes"));
        assertThat(archive.resolve(NAME)).hasContent("content");
        try (var files = Files.list(archive)) {
            assertThat(files).containsExactly(archive.resolve(NAME));
        }
    }

    @Test
    void the_same_file_again_is_delivered_without_being_touched() throws Exception {
        sent("objects/" + NAME);
        var before = Files.getLastModifiedTime(archive.resolve(NAME));
        assertThat(sent("objects/" + NAME))
                .isEqualTo(Verdict.delivered("was there already, 7 bytes"));
        assertThat(Files.getLastModifiedTime(archive.resolve(NAME))).isEqualTo(before);
    }

    @Test
    void another_file_of_the_same_name_is_never_overwritten() throws Exception {
        Files.createDirectories(archive);
        Files.writeString(archive.resolve(NAME), "other");
        assertThat(sent("objects/" + NAME).outcome()).isEqualTo(Outcome.REFUSED);
        assertThat(archive.resolve(NAME)).hasContent("other");
    }

    @Test
    void a_half_written_copy_of_a_process_that_died_is_replaced() throws Exception {
        Files.createDirectories(archive);
        Files.writeString(archive.resolve("." + NAME + ".part"), "cont");
        assertThat(sent("objects/" + NAME).outcome()).isEqualTo(Outcome.DELIVERED);
        assertThat(archive.resolve(NAME)).hasContent("content");
    }

    @Test
    void only_files_of_the_data_folder_are_delivered() throws Exception {
        Path secret = Files.writeString(temporary.resolve("secret"), "x");
        assertThat(sent(data.relativize(secret).toString()).outcome()).isEqualTo(Outcome.REFUSED);
        assertThat(sent("objects/absent.dcm").outcome()).isEqualTo(Outcome.REFUSED);
        assertThat(sent(null).outcome()).isEqualTo(Outcome.REFUSED);
    }

    private Verdict sent(String path) throws IOException {
        return new FolderDestination(archive, data)
                .send(
                        new NewDelivery(
                                "x",
                                "o",
                                "object",
                                "application/dicom",
                                null,
                                path,
                                Instant.EPOCH));
    }
}

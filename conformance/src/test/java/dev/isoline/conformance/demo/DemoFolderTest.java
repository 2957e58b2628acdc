package dev.isoline.conformance.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoFolderTest {

    @TempDir private Path root;

    @Test
    void what_an_earlier_demo_left_is_removed() throws Exception {
        DemoFolder.prepare(root).write("harrow-bay/old.hl7", "old");
        assertThat(DemoFolder.prepare(root).path("harrow-bay/old.hl7")).doesNotExist();
    }

    @Test
    void a_folder_with_something_else_in_it_is_left_alone() throws Exception {
        Path thesis = Files.writeString(root.resolve("thesis.txt"), "years of work");
        assertThatThrownBy(() -> DemoFolder.prepare(root))
                .isInstanceOf(DemoFailure.class)
                .hasMessageContaining("not from a demo");
        assertThat(thesis).exists();
    }
}

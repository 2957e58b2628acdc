package dev.isoline.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CredentialsTest {

    @TempDir Path folder;
    private Path file;

    @BeforeEach
    void path() {
        file = folder.resolve("data").resolve("credentials");
    }

    @Test
    void the_first_start_makes_a_file_only_its_owner_can_read() throws IOException {
        Credentials.open(file, List.of("operator"));
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
    }

    @Test
    void every_name_has_a_token_of_256_bits_of_its_own() throws IOException {
        var credentials = Credentials.open(file, List.of("operator", "harrow-bay"));
        String operator = token("operator");
        assertThat(operator).matches("[0-9a-f]{64}").isNotEqualTo(token("harrow-bay"));
        assertThat(credentials.accept("operator", operator)).isTrue();
        assertThat(credentials.accept("harrow-bay", operator)).isFalse();
        assertThat(credentials.accept("nobody", "")).isFalse();
    }

    @Test
    void a_restart_keeps_the_tokens_and_adds_new_names() throws IOException {
        Credentials.open(file, List.of("operator"));
        String operator = token("operator");
        var credentials = Credentials.open(file, List.of("operator", "sable-point"));
        assertThat(token("operator")).isEqualTo(operator);
        assertThat(credentials.accept("sable-point", token("sable-point"))).isTrue();
    }

    @Test
    void a_start_without_new_names_does_not_touch_the_file() throws IOException {
        Credentials.open(file, List.of("operator"));
        var before = Files.getLastModifiedTime(file);
        Credentials.open(file, List.of("operator"));
        assertThat(Files.getLastModifiedTime(file)).isEqualTo(before);
    }

    @Test
    void a_file_that_others_can_read_is_closed_to_them() throws IOException {
        Credentials.open(file, List.of("operator"));
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r--r--"));
        Credentials.open(file, List.of("operator"));
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
    }

    @Test
    void a_token_taken_out_of_the_file_no_longer_works() throws IOException {
        Credentials.open(file, List.of("operator", "old-client"));
        String old = token("old-client");
        Files.write(file, List.of("operator:" + token("operator")));
        var credentials = Credentials.open(file, List.of("operator"));
        assertThat(credentials.accept("old-client", old)).isFalse();
    }

    private String token(String name) throws IOException {
        return Files.readAllLines(file).stream()
                .filter(l -> l.startsWith(name + ":"))
                .map(l -> l.substring(name.length() + 1))
                .findFirst()
                .orElseThrow();
    }
}

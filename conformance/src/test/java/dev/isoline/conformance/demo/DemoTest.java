package dev.isoline.conformance.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoTest {

    @TempDir private Path root;

    @Test
    void a_gateway_that_does_not_start_fails_the_demo_with_a_reason() throws Exception {
        Path launcher =
                Files.createFile(
                        root.resolve("isoline"),
                        PosixFilePermissions.asFileAttribute(
                                PosixFilePermissions.fromString("rwx------")));
        Files.writeString(launcher, "#!/bin/sh\necho \"called with $*\"\nexit 3\n");
        Path out = root.resolve("out");
        List<String> failures = new Demo(launcher, new PrintWriter(new StringWriter())).run(out);
        assertThat(failures.get(0)).startsWith("The gateway ended while it started");
        assertThat(failures).contains("harrow-bay/HB-1001/oru.hl7 is missing");
        assertThat(out.resolve("gateway/gateway.log"))
                .content()
                .startsWith("called with serve --config ")
                .endsWith("isoline.yaml\n");
    }
}

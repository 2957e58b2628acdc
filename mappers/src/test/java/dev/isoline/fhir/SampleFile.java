package dev.isoline.fhir;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.hl7.fhir.r4.model.Resource;

/** A file of the repository a test compares with; {@code -Dgolden=update} rewrites it. */
public final class SampleFile {

    private static final Path ROOT = Path.of("..");

    private SampleFile() {}

    public static void assertSame(String path, Resource resource) throws IOException {
        String json =
                FhirContext.forR4Cached()
                        .newJsonParser()
                        .setPrettyPrint(true)
                        .encodeResourceToString(resource);
        assertSame(path, json + "\n");
    }

    public static void assertSame(String path, String text) throws IOException {
        Path file = ROOT.resolve(path);
        if ("update".equals(System.getProperty("golden"))) {
            Files.createDirectories(file.getParent());
            Files.writeString(file, text);
        }
        assertThat(Files.readString(file)).as(path).isEqualTo(text);
    }
}

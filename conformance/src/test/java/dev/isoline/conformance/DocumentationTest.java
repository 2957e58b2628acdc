package dev.isoline.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Whoever follows a link in the documentation arrives somewhere. */
class DocumentationTest {

    private static final Path ROOT = Path.of("..").toAbsolutePath().normalize();
    private static final List<String> PLACES = List.of("docs", "sample-messages");
    private static final Pattern LINK = Pattern.compile("]\\(([^)\\s]+)\\)");
    private static final Pattern CODE = Pattern.compile("(?s)```.*?```|`[^`\n]*`");
    private static final Pattern HEADING = Pattern.compile("(?m)^#+ +(.*)$");

    @TestFactory
    Stream<DynamicTest> every_relative_link_leads_to_a_file_of_the_repository() throws IOException {
        return pages().stream()
                .map(
                        page ->
                                DynamicTest.dynamicTest(
                                        ROOT.relativize(page).toString(),
                                        () -> assertThat(deadLinks(page)).isEmpty()));
    }

    private static List<Path> pages() throws IOException {
        try (var top = Files.list(ROOT)) {
            var pages = top.filter(DocumentationTest::isPage).toList();
            return Stream.concat(pages.stream(), PLACES.stream().flatMap(DocumentationTest::below))
                    .sorted()
                    .toList();
        }
    }

    private static Stream<Path> below(String folder) {
        try (var files = Files.walk(ROOT.resolve(folder))) {
            return files.filter(DocumentationTest::isPage).toList().stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean isPage(Path file) {
        return file.toString().endsWith(".md");
    }

    private static List<String> deadLinks(Path page) throws IOException {
        String prose = CODE.matcher(Files.readString(page)).replaceAll("");
        return LINK.matcher(prose)
                .results()
                .map(link -> link.group(1))
                .filter(link -> !link.matches("[a-z]+:.*"))
                .filter(link -> !leadsSomewhere(page, link))
                .toList();
    }

    private static boolean leadsSomewhere(Path page, String link) {
        String[] parts = link.split("#", 2);
        Path target = parts[0].isEmpty() ? page : page.resolveSibling(parts[0]).normalize();
        return target.startsWith(ROOT)
                && Files.exists(target)
                && (parts.length == 1 || anchors(target).contains(parts[1]));
    }

    /** Anchors as common renderers make them: lower case, blanks as hyphens, no punctuation. */
    private static List<String> anchors(Path page) {
        try {
            return HEADING.matcher(Files.readString(page))
                    .results()
                    .map(heading -> heading.group(1).toLowerCase(Locale.ROOT))
                    .map(heading -> heading.replaceAll("[^\\p{L}\\p{N} _-]", "").replace(' ', '-'))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

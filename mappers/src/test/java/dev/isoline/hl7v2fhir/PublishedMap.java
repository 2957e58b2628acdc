package dev.isoline.hl7v2fhir;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One published map (rows/*.csv, facts of HL7 v2-to-FHIR 1.0.0) beside our page about it
 * (docs/mappings/*.md).
 *
 * @param rows row to target, as published
 * @param coded rows the page says are coded, with the proof
 * @param leftOut row to reason
 */
record PublishedMap(
        String name, Map<String, String> rows, List<Coded> coded, Map<String, String> leftOut) {

    /**
     * @param given message fields; the text in braces is what the row carries
     * @param shown path in the result, with {@code =value} where the value matters
     */
    record Coded(String row, String target, String given, String shown) {}

    private static final Path ROWS = Path.of("src/test/resources/dev/isoline/hl7v2fhir/rows");
    private static final Path PAGES = Path.of("../docs/mappings");
    private static final Pattern ROW =
            Pattern.compile("([^,]*),(\"(?:[^\"]|\"\")*\"|[^,]*),(\"(?:[^\"]|\"\")*\"|[^,]*),.*");

    static List<PublishedMap> all() {
        try (var files = Files.list(ROWS)) {
            return files.sorted().map(PublishedMap::read).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static PublishedMap read(Path csv) {
        String name = csv.getFileName().toString().replace(".csv", "");
        Map<String, String> rows = new LinkedHashMap<>();
        for (String line : lines(csv).subList(2, lines(csv).size())) {
            Matcher matcher = ROW.matcher(line);
            if (!matcher.matches()) {
                throw new IllegalStateException(csv + ": " + line);
            }
            rows.put(
                    matcher.group(1),
                    matcher.group(3).replaceAll("^\"|\"$", "").replace("\"\"", "\""));
        }
        List<Coded> coded = new ArrayList<>();
        Map<String, String> leftOut = new LinkedHashMap<>();
        for (String line : lines(PAGES.resolve(name + ".md"))) {
            String[] cells = line.replaceAll("^\\| | \\|$", "").split(" \\| ");
            if (rows.containsKey(cells[0]) && cells.length == 4) {
                coded.add(new Coded(cells[0], plain(cells[1]), plain(cells[2]), plain(cells[3])));
            } else if (line.startsWith("| ") && cells.length == 3 && !cells[0].equals("row")) {
                leftOut.put(cells[0], cells[2]);
            }
        }
        return new PublishedMap(name, rows, coded, leftOut);
    }

    private static String plain(String cell) {
        return cell.replaceAll("^`|`$", "");
    }

    private static List<String> lines(Path file) {
        try {
            return Files.readAllLines(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

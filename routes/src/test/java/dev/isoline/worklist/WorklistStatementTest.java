package dev.isoline.worklist;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.dicom.Tag;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The keys of the conformance statement are the keys of the program. */
class WorklistStatementTest {

    private static final Path STATEMENT = Path.of("../docs/conformance-statements/dicom.md");

    @Test
    void every_key_stands_in_the_statement_and_none_else_does() throws IOException {
        var carried = new TreeSet<String>();
        for (int sequence : Set.of(CarriedAttributes.ITEM, Tag.ScheduledProcedureStepSequence)) {
            CarriedAttributes.all().get(sequence).forEach(tag -> carried.add(Tag.format(tag)));
        }
        assertThat(stated()).containsExactlyElementsOf(carried);
    }

    private static Set<String> stated() throws IOException {
        String text = Files.readString(STATEMENT);
        String section =
                text.substring(text.indexOf("#### 8.6.1 Keys"), text.indexOf("#### 8.6.2 "));
        return Pattern.compile("\\([0-9A-F]{4},[0-9A-F]{4}\\)")
                .matcher(section)
                .results()
                .map(found -> found.group())
                .collect(Collectors.toCollection(TreeSet::new));
    }
}

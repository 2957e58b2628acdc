package dev.isoline.ledger;

import dev.isoline.ledger.FoundBy.Key;
import dev.isoline.ledger.ResourceTable.IndexEntry;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * The keys of a resource in one column: a version takes back what the one before was found by,
 * whatever a resource was indexed by then.
 */
final class Keys {

    /** Information separators, which neither JSON nor XML lets into a FHIR string. */
    private static final String RECORD = "\u001e";

    private static final String UNIT = "\u001f";

    private Keys() {}

    static List<Key> of(String type, List<IndexEntry> index) {
        return index.stream()
                .map(e -> new Key(type + "." + e.param(), system(e), e.value()))
                .distinct()
                .toList();
    }

    static String write(List<Key> keys) {
        return keys.stream()
                .map(key -> String.join(UNIT, key.param(), key.system(), key.value()))
                .collect(Collectors.joining(RECORD));
    }

    static List<Key> read(String keys) {
        return keys.isEmpty()
                ? List.of()
                : Arrays.stream(keys.split(RECORD)).map(Keys::key).toList();
    }

    private static Key key(String text) {
        String[] units = text.split(UNIT, -1);
        return new Key(units[0], units[1], units[2]);
    }

    private static String system(IndexEntry entry) {
        return Objects.requireNonNullElse(entry.system(), "");
    }
}

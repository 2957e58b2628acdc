package dev.isoline.hl7v2;

import java.util.Arrays;
import java.util.SortedMap;
import java.util.TreeMap;

/** One segment as text, written field by field in any delimiters. */
final class SegmentText {

    private final Delimiters delimiters;
    private final String name;
    private final int implied;
    private final SortedMap<Integer, String> fields = new TreeMap<>();

    /**
     * @param implied how many fields the first separator stands for: 1 in MSH and BHS, else 0
     */
    SegmentText(Delimiters delimiters, String name, int implied) {
        this.delimiters = delimiters;
        this.name = name;
        this.implied = implied;
    }

    /** A field that is already written in these delimiters. */
    SegmentText raw(int number, String field) {
        fields.put(number, field);
        return this;
    }

    SegmentText text(int number, String text) {
        return raw(number, delimiters.escape(text));
    }

    SegmentText components(int number, String... components) {
        var escaped = Arrays.stream(components).map(delimiters::escape).toList();
        return raw(number, String.join(String.valueOf(delimiters.component()), escaped));
    }

    @Override
    public String toString() {
        var segment = new StringBuilder(name);
        int written = implied;
        for (var field : fields.entrySet()) {
            if (!field.getValue().isEmpty()) {
                segment.append(String.valueOf(delimiters.field()).repeat(field.getKey() - written));
                segment.append(field.getValue());
                written = field.getKey();
            }
        }
        return segment.toString();
    }
}

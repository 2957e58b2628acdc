package dev.isoline.dicom.json;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Element;
import dev.isoline.dicom.Vr;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Writes the Value array of an attribute, PS3.18 F.2.3 to F.2.5. */
final class JsonValues {

    /** A number of JSON, RFC 8259 section 6. */
    static final Pattern NUMBER =
            Pattern.compile("-?(0|[1-9][0-9]*)(\\.[0-9]+)?([eE][+-]?[0-9]+)?");

    /** Longer integers may lose digits where numbers are doubles, as in JavaScript. */
    private static final int EXACT = 15;

    static final List<String> COMPONENT_GROUPS = List.of("Alphabetic", "Ideographic", "Phonetic");

    private final Writer out;
    private final int tag;

    private JsonValues(Writer out, int tag) {
        this.out = out;
        this.tag = tag;
    }

    static void write(Writer out, DataSet dataSet, Element element) throws IOException {
        new JsonValues(out, element.tag()).write(dataSet, element.vr());
    }

    private interface Form<T> {
        void write(T value) throws IOException;
    }

    private void write(DataSet dataSet, Vr vr) throws IOException {
        switch (vr) {
            case FL ->
                    list(
                            dataSet.numbers(tag),
                            number -> real(number, Float.toString(number.floatValue())));
            case FD -> list(dataSet.numbers(tag), number -> real(number, Double.toString(number)));
            case US, UL, SS, SL -> list(dataSet.ints(tag), number -> out.write(number.toString()));
            case SV -> list(dataSet.ints(tag), number -> large(number.toString()));
            case UV -> list(dataSet.ints(tag), number -> large(Long.toUnsignedString(number)));
            case AT ->
                    list(dataSet.ints(tag), number -> out.write(String.format("\"%08X\"", number)));
            case DS, IS -> list(dataSet.texts(tag), this::numeral);
            case PN -> list(dataSet.texts(tag), this::name);
            default -> list(dataSet.texts(tag), this::text);
        }
    }

    private <T> void list(List<T> values, Form<T> form) throws IOException {
        out.write('[');
        String comma = "";
        for (T value : values) {
            out.write(comma);
            form.write(value);
            comma = ",";
        }
        out.write(']');
    }

    private void real(double value, String shortest) throws IOException {
        if (!Double.isFinite(value)) {
            throw new DicomException(tag, "is no number that JSON can say");
        }
        out.write(shortest);
    }

    private void large(String digits) throws IOException {
        out.write(digits.length() > EXACT ? '"' + digits + '"' : digits);
    }

    /** F.2.3 note: a string keeps what a number cannot say, such as {@code +1} or {@code .5}. */
    private void numeral(String value) throws IOException {
        if (NUMBER.matcher(value).matches()) {
            out.write(value);
        } else {
            text(value);
        }
    }

    /** F.2.5: an empty value among others is null. */
    private void text(String value) throws IOException {
        if (value.isEmpty()) {
            out.write("null");
        } else {
            JsonText.write(out, value);
        }
    }

    /** F.2.2: the component groups of PS3.5 6.2.1 that are not empty. */
    private void name(String value) throws IOException {
        String[] groups = value.split("=", COMPONENT_GROUPS.size());
        var members = new ArrayList<Integer>();
        for (int i = 0; i < groups.length; i++) {
            if (!groups[i].isEmpty()) {
                members.add(i);
            }
        }
        if (members.isEmpty()) {
            out.write("null");
            return;
        }
        String comma = "{\"";
        for (int i : members) {
            out.write(comma + COMPONENT_GROUPS.get(i) + "\":");
            JsonText.write(out, groups[i]);
            comma = ",\"";
        }
        out.write('}');
    }
}

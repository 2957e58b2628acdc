package dev.isoline.dicom.json;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Vr;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Map;

/** Puts the value of one attribute of a JSON into a data set, PS3.18 F.2.3 to F.2.7. */
final class JsonElement {

    private static final int LONGEST_DS = 16;

    private final int tag;

    private JsonElement(int tag) {
        this.tag = tag;
    }

    static Json.Array array(int tag, Json value) throws DicomException {
        if (value instanceof Json.Array array) {
            return array;
        }
        throw new DicomException(tag, "has a Value that is no array");
    }

    static void binary(DataSet dataSet, int tag, Vr vr, Json inline) throws DicomException {
        if (!JsonVr.isBinary(vr) || !(inline instanceof Json.Text base64)) {
            throw new DicomException(tag, "has InlineBinary that is no string, or not for its vr");
        }
        try {
            dataSet.putBytes(tag, vr, Base64.getDecoder().decode(base64.value()));
        } catch (IllegalArgumentException e) {
            throw new DicomException(tag, "has InlineBinary that is not base64");
        }
    }

    static void values(DataSet dataSet, int tag, Vr vr, Json value) throws DicomException {
        List<Json> values = value == null ? List.of() : array(tag, value).values();
        if (values.isEmpty()) {
            dataSet.putBytes(tag, vr, new byte[0]);
        } else if (JsonVr.isBinary(vr)) {
            throw new DicomException(tag, "has a Value, but its vr takes InlineBinary");
        } else if (JsonVr.isSingle(vr) && values.size() > 1) {
            throw new DicomException(tag, "has several values, but its vr takes one");
        } else {
            new JsonElement(tag).put(dataSet, vr, values);
        }
    }

    private interface Form<T> {
        T of(Json json) throws DicomException;
    }

    private void put(DataSet dataSet, Vr vr, List<Json> values) throws DicomException {
        switch (vr) {
            case FL, FD -> dataSet.putNumbers(tag, vr, reals(vr, values));
            case US, UL, SS, SL -> dataSet.putInts(tag, vr, integers(values, this::integer));
            case SV -> dataSet.putInts(tag, vr, integers(values, this::signed64));
            case UV -> dataSet.putInts(tag, vr, integers(values, this::unsigned64));
            case AT -> dataSet.putInts(tag, vr, integers(values, this::attributeTag));
            case DS -> dataSet.putText(tag, vr, texts(values, this::decimalString));
            case IS -> dataSet.putText(tag, vr, texts(values, this::integerString));
            case PN -> dataSet.putText(tag, vr, texts(values, this::personName));
            default -> dataSet.putText(tag, vr, texts(values, this::text));
        }
    }

    private static String[] texts(List<Json> values, Form<String> form) throws DicomException {
        var texts = new String[values.size()];
        for (int i = 0; i < texts.length; i++) {
            texts[i] = values.get(i) == Json.Literal.NULL ? "" : form.of(values.get(i));
        }
        return texts;
    }

    private static long[] integers(List<Json> values, Form<Long> form) throws DicomException {
        var integers = new long[values.size()];
        for (int i = 0; i < integers.length; i++) {
            integers[i] = form.of(values.get(i));
        }
        return integers;
    }

    private double[] reals(Vr vr, List<Json> values) throws DicomException {
        var reals = new double[values.size()];
        for (int i = 0; i < reals.length; i++) {
            reals[i] = Double.parseDouble(numeral(values.get(i)));
            double largest = vr == Vr.FL ? Float.MAX_VALUE : Double.MAX_VALUE;
            if (Math.abs(reals[i]) > largest) {
                throw not("a number " + vr + " can hold");
            }
        }
        return reals;
    }

    private DicomException not(String what) {
        return new DicomException(tag, "has a value that is not " + what);
    }

    private String numeral(Json json) throws DicomException {
        if (json instanceof Json.Numeral numeral) {
            return numeral.digits();
        }
        throw not("a number");
    }

    private String text(Json json) throws DicomException {
        if (json instanceof Json.Text text) {
            return text.value();
        }
        throw not("a string");
    }

    private String digits(Json json) throws DicomException {
        return json instanceof Json.Text text ? text.value() : numeral(json);
    }

    private long integer(Json json) throws DicomException {
        return exact(numeral(json));
    }

    private long exact(String digits) throws DicomException {
        try {
            return new BigDecimal(digits).longValueExact();
        } catch (ArithmeticException e) {
            throw not("an integer");
        }
    }

    private long signed64(Json json) throws DicomException {
        try {
            return Long.parseLong(digits(json).strip());
        } catch (NumberFormatException e) {
            throw not("a signed integer of 64 bits");
        }
    }

    private long unsigned64(Json json) throws DicomException {
        try {
            return Long.parseUnsignedLong(digits(json).strip());
        } catch (NumberFormatException e) {
            throw not("an unsigned integer of 64 bits");
        }
    }

    private long attributeTag(Json json) throws DicomException {
        String hex = text(json);
        if (!hex.matches("[0-9A-Fa-f]{8}")) {
            throw not("a tag of 8 hex digits");
        }
        return Long.parseLong(hex, 16);
    }

    /** A string is kept as it is; a number too where it fits the 16 characters of DS. */
    private String decimalString(Json json) throws DicomException {
        if (json instanceof Json.Text text) {
            return text.value();
        }
        String digits = numeral(json);
        return digits.length() <= LONGEST_DS ? digits : shortened(digits);
    }

    private String shortened(String digits) throws DicomException {
        var rounded = new DataSet().putNumbers(tag, Vr.DS, Double.parseDouble(digits));
        return new String(rounded.bytes(tag), StandardCharsets.US_ASCII);
    }

    private String integerString(Json json) throws DicomException {
        if (json instanceof Json.Text text) {
            return text.value();
        }
        String digits = numeral(json);
        return digits.matches("-?[0-9]{1,11}") ? digits : Long.toString(exact(digits));
    }

    private String personName(Json json) throws DicomException {
        if (!(json instanceof Json.Members name)) {
            throw not("a person name object");
        }
        return (group(name.members(), 0)
                        + "="
                        + group(name.members(), 1)
                        + "="
                        + group(name.members(), 2))
                .replaceAll("=+$", "");
    }

    private String group(Map<String, Json> name, int group) throws DicomException {
        Json text = name.get(JsonValues.COMPONENT_GROUPS.get(group));
        String value = text == null ? "" : text(text);
        if (value.indexOf('=') >= 0) {
            throw not("a person name");
        }
        return value;
    }
}

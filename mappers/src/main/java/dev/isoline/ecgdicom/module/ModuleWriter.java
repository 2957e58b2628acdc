package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.BulkValue;
import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Dictionary;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.Vr;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import java.util.List;
import java.util.Map;

/**
 * Attributes of one module, by their type (PS3.5 7.4): type 1 refuses an empty value, type 2 writes
 * it empty, type 3 skips it, type 1C is type 1 where its condition holds and absent elsewhere.
 *
 * <p>Values: text, Integer or Long, Double, several integers, a list of items, {@link BulkValue} or
 * bytes.
 */
public final class ModuleWriter {

    /** Characters a value may have, PS3.5 table 6.2-1. */
    private static final Map<Vr, Integer> LONGEST =
            Map.of(Vr.SH, 16, Vr.LO, 64, Vr.CS, 16, Vr.UI, 64, Vr.PN, 64, Vr.ST, 1024);

    private final String module;
    private final DataSet dataSet = new DataSet();

    /**
     * @param module its name and section
     */
    public ModuleWriter(String module) {
        this.module = module;
    }

    public ModuleWriter type1(int tag, Object value) {
        if (isEmpty(value)) {
            throw fault(Problem.Kind.REQUIRED, tag, "has no value");
        }
        put(tag, value);
        return this;
    }

    public ModuleWriter type2(int tag, Object value) {
        if (isEmpty(value)) {
            dataSet.putEmpty(tag);
        } else {
            put(tag, value);
        }
        return this;
    }

    public ModuleWriter type3(int tag, Object value) {
        if (!isEmpty(value)) {
            put(tag, value);
        }
        return this;
    }

    public ModuleWriter type1C(boolean required, int tag, Object value) {
        return required ? type1(tag, value) : this;
    }

    public DataSet dataSet() {
        return dataSet;
    }

    private static boolean isEmpty(Object value) {
        return "".equals(value)
                || value instanceof List<?> items && items.isEmpty()
                || value instanceof long[] numbers && numbers.length == 0
                || value instanceof byte[] bytes && bytes.length == 0;
    }

    private void put(int tag, Object value) {
        try {
            if (value instanceof String text) {
                dataSet.putText(tag, checked(tag, text));
            } else if (value instanceof Double number) {
                dataSet.putNumbers(tag, number);
            } else if (value instanceof Number number) {
                dataSet.putInts(tag, number.longValue());
            } else if (value instanceof long[] numbers) {
                dataSet.putInts(tag, numbers);
            } else if (value instanceof BulkValue bulk) {
                dataSet.putBulk(tag, Dictionary.vr(tag), bulk);
            } else if (value instanceof byte[] bytes) {
                dataSet.putBytes(tag, Dictionary.vr(tag), bytes);
            } else {
                dataSet.putItems(tag, ((List<?>) value).stream().map(DataSet.class::cast).toList());
            }
        } catch (DicomException e) {
            throw fault(Problem.Kind.VALUE, tag, "cannot be written");
        }
    }

    private String checked(int tag, String text) {
        int longest = LONGEST.getOrDefault(Dictionary.vr(tag), Integer.MAX_VALUE);
        if (text.codePointCount(0, text.length()) > longest) {
            throw fault(Problem.Kind.VALUE, tag, "has more than " + longest + " characters");
        }
        if (text.indexOf('\\') >= 0 || text.chars().anyMatch(Character::isISOControl)) {
            throw fault(Problem.Kind.VALUE, tag, "has a backslash or a control character");
        }
        return text;
    }

    private ContentError fault(Problem.Kind kind, int tag, String fault) {
        String name = Dictionary.name(tag).orElse("");
        return new ContentError(
                Problem.error(kind, Tag.format(tag), module + ": " + name + " " + fault + "."));
    }
}

package dev.isoline.dicom;

import java.util.List;

/**
 * A data element, PS3.5 7.1.
 *
 * @param tag group number in the upper, element number in the lower 16 bits
 * @param vr value representation
 * @param value its value; empty bytes where it has none
 */
public record Element(int tag, Vr vr, Value value) {

    public boolean isEmpty() {
        return items().isEmpty() && length() == 0;
    }

    /** The items of a sequence; none where this is not one. */
    public List<DataSet> items() {
        return value instanceof Value.Items sequence ? sequence.items() : List.of();
    }

    /** Bytes of the value, without padding; 0 for a sequence. */
    public long length() {
        if (value instanceof Value.Bulk elsewhere) {
            return elsewhere.bulk().length();
        }
        return value instanceof Value.Bytes raw ? raw.bytes().length : 0;
    }

    /** The bytes held, without copying. */
    byte[] bytes() throws DicomException {
        if (value instanceof Value.Bytes raw) {
            return raw.bytes();
        }
        throw new DicomException(tag, "is not a value held in memory");
    }

    /** The VR its value has: what the dictionary knows where the stream said UN. */
    Vr valueVr() {
        return vr == Vr.UN ? Dictionary.vr(tag) : vr;
    }
}

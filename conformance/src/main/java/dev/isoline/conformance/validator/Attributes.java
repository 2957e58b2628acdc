package dev.isoline.conformance.validator;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Element;
import java.util.Arrays;
import java.util.List;

/** Attributes of a data set that may hold anything: what cannot be read as asked is not there. */
record Attributes(DataSet dataSet) {

    String text(int tag) {
        try {
            return dataSet.text(tag).orElse("");
        } catch (DicomException unreadable) {
            return "";
        }
    }

    /** NaN where there is none. */
    double number(int tag) {
        try {
            return dataSet.number(tag).orElse(Double.NaN);
        } catch (DicomException unreadable) {
            return Double.NaN;
        }
    }

    /** -1 where there is none. */
    long integer(int tag) {
        return integers(tag).stream().findFirst().orElse(-1L);
    }

    List<Long> integers(int tag) {
        try {
            return dataSet.ints(tag);
        } catch (DicomException unreadable) {
            return List.of();
        }
    }

    boolean has(int tag) {
        return dataSet.hasValue(tag);
    }

    /** Bytes of a value; -1 where there is none. */
    long length(int tag) {
        return dataSet.element(tag).map(Element::length).orElse(-1L);
    }

    List<Attributes> items(int tag) {
        return dataSet.items(tag).stream().map(Attributes::new).toList();
    }

    long present(int... tags) {
        return Arrays.stream(tags).filter(this::has).count();
    }
}

package dev.isoline.dicom;

import java.util.Arrays;
import java.util.List;

/** What an element holds. */
public sealed interface Value permits Value.Bytes, Value.Items, Value.Bulk {

    /**
     * Little endian bytes as they stand in the stream, without padding of our own.
     *
     * @param set the character set of the bytes, where the VR is text
     */
    record Bytes(byte[] bytes, CharacterSet set) implements Value {

        @Override
        public boolean equals(Object other) {
            return other instanceof Bytes that && Arrays.equals(bytes, that.bytes);
        }

        @Override
        public int hashCode() {
            return Arrays.hashCode(bytes);
        }

        @Override
        public String toString() {
            return bytes.length + " bytes";
        }
    }

    /** The items of a sequence. */
    record Items(List<DataSet> items) implements Value {

        public Items {
            items = List.copyOf(items);
        }
    }

    /** Bytes that are elsewhere. */
    record Bulk(BulkValue bulk) implements Value {}
}

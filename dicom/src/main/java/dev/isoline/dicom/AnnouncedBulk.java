package dev.isoline.dicom;

import java.nio.channels.WritableByteChannel;

/**
 * A value whose bytes the caller appends after the data set was written, so that a stream of
 * unknown length can be written before its length is known: the head takes the same number of bytes
 * whatever the length, and is written over at the end. Only for the last value of a data set.
 *
 * @param length bytes that follow
 */
public record AnnouncedBulk(long length) implements BulkValue {

    @Override
    public void writeTo(WritableByteChannel target) {
        // the bytes follow after the data set
    }
}

package dev.isoline.dicom.waveform;

import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Element;
import dev.isoline.dicom.FileBulk;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.Value;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** Parts of Waveform Data (5400,1010), from memory or from the file it was left in. */
final class SampleBytes {

    private final Value value;
    private final long length;

    SampleBytes(Element waveformData) {
        this.value = waveformData.value();
        this.length = waveformData.length();
    }

    long length() {
        return length;
    }

    /** Little endian bytes from an offset on. */
    ByteBuffer part(long offset, int count) throws IOException {
        if (value instanceof Value.Bytes raw) {
            return little(ByteBuffer.wrap(raw.bytes(), (int) offset, count).slice());
        }
        if (value instanceof Value.Bulk bulk && bulk.bulk() instanceof FileBulk file) {
            return little(read(file, offset, count));
        }
        throw new DicomException(Tag.WaveformData, "is neither in memory nor in a file");
    }

    private static ByteBuffer read(FileBulk file, long offset, int count) throws IOException {
        var bytes = ByteBuffer.allocate(count);
        file.source().position(file.offset() + offset);
        while (bytes.hasRemaining()) {
            if (file.source().read(bytes) < 0) {
                throw new DicomException(Tag.WaveformData, "is cut off where the file ends");
            }
        }
        return bytes.flip();
    }

    private static ByteBuffer little(ByteBuffer bytes) {
        return bytes.order(ByteOrder.LITTLE_ENDIAN);
    }
}

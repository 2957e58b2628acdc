package dev.isoline.dicom.waveform;

import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Tag;
import java.nio.ByteBuffer;

/**
 * Waveform Sample Interpretation (5400,1006), PS3.3 C.10.9.1.5. Bits above Waveform Bits Stored
 * repeat the sign, so a sample is read as wide as it is allocated. Mu-law and A-law (MB, AB), UL
 * and 64-bit samples are not read.
 */
enum SampleFormat {
    SB(1) {
        @Override
        int sample(ByteBuffer bytes) {
            return bytes.get();
        }
    },
    UB(1) {
        @Override
        int sample(ByteBuffer bytes) {
            return bytes.get() & 0xFF;
        }
    },
    SS(2) {
        @Override
        int sample(ByteBuffer bytes) {
            return bytes.getShort();
        }
    },
    US(2) {
        @Override
        int sample(ByteBuffer bytes) {
            return bytes.getShort() & 0xFFFF;
        }
    },
    SL(4) {
        @Override
        int sample(ByteBuffer bytes) {
            return bytes.getInt();
        }
    };

    private final int width;

    SampleFormat(int width) {
        this.width = width;
    }

    /** Bytes of a sample. */
    int width() {
        return width;
    }

    /** The next sample of little endian bytes. */
    abstract int sample(ByteBuffer bytes);

    static SampleFormat of(String interpretation, long bitsAllocated) throws DicomException {
        for (SampleFormat format : values()) {
            if (format.name().equals(interpretation)) {
                if (format.width * Byte.SIZE != bitsAllocated) {
                    throw new DicomException(
                            Tag.WaveformBitsAllocated, "does not fit the sample interpretation");
                }
                return format;
            }
        }
        throw new DicomException(
                Tag.WaveformSampleInterpretation, "is none of SB, UB, SS, US and SL");
    }
}

package dev.isoline.ecg.dicom;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.RecordingException;
import java.nio.ByteBuffer;
import java.util.OptionalInt;

/** How a sample is stored: Waveform Sample Interpretation (5400,1006), PS3.3 C.10.9.1.5. */
enum DicomSample {
    SB(1),
    UB(1),
    SS(2),
    US(2),
    SL(4);

    private final int bytes;

    DicomSample(int bytes) {
        this.bytes = bytes;
    }

    static DicomSample of(long bitsAllocated, String interpretation) throws RecordingException {
        for (DicomSample sample : values()) {
            if (sample.name().equals(interpretation) && sample.bytes * 8 == bitsAllocated) {
                return sample;
            }
        }
        throw new RecordingException(
                "Samples of the DICOM object are neither SB, UB, SS, US nor SL of their length.");
    }

    int bytes() {
        return bytes;
    }

    /** The next sample, {@link Block#MISSING} where it is padding. */
    int next(ByteBuffer littleEndian, OptionalInt padding) {
        int sample =
                switch (this) {
                    case SB -> littleEndian.get();
                    case UB -> littleEndian.get() & 0xFF;
                    case SS -> littleEndian.getShort();
                    case US -> littleEndian.getShort() & 0xFFFF;
                    case SL -> littleEndian.getInt();
                };
        return padding.isPresent() && padding.getAsInt() == sample ? Block.MISSING : sample;
    }
}

package dev.isoline.dicom;

/** What a reader has used of its {@link ReadLimits}. */
final class Budget {

    private final ReadLimits limits;
    private int elements;
    private long memory;

    Budget(ReadLimits limits) {
        this.limits = limits;
    }

    /** One more element or item. */
    void element(int tag) throws DicomException {
        if (++elements > limits.elements()) {
            throw new DicomException(tag, "exceeds the limit of " + limits.elements());
        }
    }

    void depth(int tag, int depth) throws DicomException {
        if (depth >= limits.depth()) {
            throw new DicomException(tag, "is nested deeper than " + limits.depth());
        }
    }

    /** True where a value of this length is not to be held in memory. */
    boolean isBulk(Vr vr, long length) {
        return length > limits.inline() && !vr.isText();
    }

    void memory(int tag, long bytes) throws DicomException {
        memory += bytes;
        if (memory > limits.memory()) {
            throw new DicomException(tag, "exceeds the limit of bytes held in memory");
        }
    }
}

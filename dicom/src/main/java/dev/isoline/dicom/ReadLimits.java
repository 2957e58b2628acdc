package dev.isoline.dicom;

/**
 * What a reader accepts from a file that may be hostile.
 *
 * @param depth sequences inside sequences
 * @param elements of all data sets and items together
 * @param inline bytes of a value held in memory; a longer one stays in the source as a {@link
 *     FileBulk}, but for text, which is always held
 * @param memory bytes of all values held in memory together
 */
public record ReadLimits(int depth, int elements, int inline, long memory) {

    public static final ReadLimits DEFAULT = new ReadLimits(32, 200_000, 64 * 1024, 16 << 20);
}

package dev.isoline.dicom;

import java.util.Optional;

/**
 * The elements a private creator has reserved in one data set or item, PS3.5 7.8.1. An item needs
 * its own creators: none is inherited from the data set around it.
 *
 * @param group odd group number
 * @param block 10H to FFH; the elements are (group, block00) to (group, blockFF)
 */
public record PrivateBlock(int group, int block) {

    private static final int FIRST = 0x10;
    private static final int LAST = 0xFF;
    private static final int LONGEST_CREATOR = 64;

    /** The block of a creator, where the data set has one. */
    public static Optional<PrivateBlock> find(DataSet dataSet, int group, String creator)
            throws DicomException {
        for (int block = FIRST; block <= LAST; block++) {
            if (dataSet.text(creatorTag(group, block)).filter(creator::equals).isPresent()) {
                return Optional.of(new PrivateBlock(group, block));
            }
        }
        return Optional.empty();
    }

    /**
     * The block of a creator, reserved where the data set has none.
     *
     * @param creator 1 to 64 characters of ASCII
     * @throws DicomException where the creator is no such text or all blocks are taken
     */
    public static PrivateBlock reserve(DataSet dataSet, int group, String creator)
            throws DicomException {
        Optional<PrivateBlock> found = find(dataSet, group, creator);
        if (found.isPresent()) {
            return found.get();
        }
        checkCreator(group, creator);
        for (int block = FIRST; block <= LAST; block++) {
            if (!dataSet.contains(creatorTag(group, block))) {
                dataSet.putText(creatorTag(group, block), creator);
                return new PrivateBlock(group, block);
            }
        }
        throw new DicomException(group << 16, "has no private block left");
    }

    private static void checkCreator(int group, String creator) throws DicomException {
        boolean ascii = creator.chars().allMatch(c -> c >= ' ' && c <= '~' && c != '\\');
        if (!ascii || creator.isBlank() || creator.length() > LONGEST_CREATOR) {
            throw new DicomException(
                    creatorTag(group, FIRST), "needs a creator of 1 to 64 characters of ASCII");
        }
    }

    /** The creator's own tag. */
    public int creator() {
        return creatorTag(group, block);
    }

    /** Tag of an element of the block, 00H to FFH. */
    public int tag(int element) {
        return group << 16 | block << 8 | element & 0xFF;
    }

    private static int creatorTag(int group, int block) {
        int tag = group << 16 | block;
        if (!Tag.isPrivateCreator(tag) || group < 0x0009 || group == 0xFFFF) {
            throw new IllegalArgumentException(Tag.format(tag) + " is not a private creator");
        }
        return tag;
    }
}

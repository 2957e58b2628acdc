package dev.isoline.dicom.spi;

/**
 * An application entity title, PS3.8 9.3.2 and PS3.5 table 6.2-1: 1 to 16 characters of ISO 646
 * without backslash and control characters; leading and trailing spaces do not count.
 *
 * @param value the title without such spaces
 */
public record AeTitle(String value) {

    private static final int MOST = 16;

    /**
     * @throws IllegalArgumentException where it is no such title
     */
    public AeTitle {
        value = trimmed(value);
        if (value.isEmpty() || value.length() > MOST || !value.chars().allMatch(AeTitle::allowed)) {
            throw new IllegalArgumentException(
                    "an AE title is 1 to 16 characters of ASCII without backslash: "
                            + value.replaceAll("[^ -~]", "?"));
        }
    }

    private static boolean allowed(int c) {
        return c >= ' ' && c <= '~' && c != '\\';
    }

    private static String trimmed(String value) {
        int start = 0;
        int end = value.length();
        while (start < end && value.charAt(start) == ' ') {
            start++;
        }
        while (end > start && value.charAt(end - 1) == ' ') {
            end--;
        }
        return value.substring(start, end);
    }

    @Override
    public String toString() {
        return value;
    }
}

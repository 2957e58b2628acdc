package dev.isoline.worklist;

import java.util.Arrays;
import java.util.stream.Stream;

/** Wild Card Matching, PS3.4 C.2.2.2.4: {@code *} any characters or none, {@code ?} one. */
final class WildCard {

    private WildCard() {}

    static boolean isIn(String key) {
        return key.indexOf('*') >= 0 || key.indexOf('?') >= 0;
    }

    /** A key that is universal matching by another name. */
    static boolean isUniversal(String key) {
        return !key.isEmpty() && key.chars().allMatch(c -> c == '*');
    }

    /** What a value that matches begins with. */
    static String beginning(String key) {
        int end = 0;
        while (end < key.length() && key.charAt(end) != '*' && key.charAt(end) != '?') {
            end++;
        }
        return key.substring(0, end);
    }

    /** What a value that matches has in it, in this order. */
    static Stream<String> pieces(String key) {
        return Arrays.stream(key.split("[*?]+"));
    }

    /** In time proportional to both lengths at most, whatever the key. */
    static boolean matches(String key, String value) {
        int k = 0;
        int v = 0;
        int star = -1;
        int resume = 0;
        while (v < value.length()) {
            if (k < key.length() && key.charAt(k) == '*') {
                star = k++;
                resume = v;
            } else if (k < key.length() && fits(key.charAt(k), value.charAt(v))) {
                k++;
                v++;
            } else if (star >= 0) {
                k = star + 1;
                v = ++resume;
            } else {
                return false;
            }
        }
        return WildCard.isUniversal(key.substring(k)) || k == key.length();
    }

    private static boolean fits(char key, char value) {
        return key == '?' || key == value;
    }
}

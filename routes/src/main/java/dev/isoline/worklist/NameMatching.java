package dev.isoline.worklist;

import java.util.Comparator;

/**
 * A key of VR PN: every component group it has is matched in {@link NameForm}, with wild cards; a
 * name lacks no component delimiter that the key has.
 */
final class NameMatching {

    private NameMatching() {}

    static boolean matches(String key, String name) {
        String[] keys = key.split("=", -1);
        String[] names = name.split("=", -1);
        for (int group = 0; group < keys.length; group++) {
            if (!keys[group].isEmpty()
                    && !group(keys[group], group < names.length ? names[group] : "")) {
                return false;
            }
        }
        return true;
    }

    /** What the name's form begins with where it matches the key; empty where that is not known. */
    static String beginning(String key) {
        return WildCard.beginning(NameForm.of(key.split("=", -1)[0])).replaceFirst("[\\^ ]+$", "");
    }

    /** The longest piece that is in the name's form where it matches the key; empty for none. */
    static String within(String key) {
        return WildCard.pieces(NameForm.of(key.split("=", -1)[0]))
                .map(piece -> piece.replaceAll("^[\\^ ]+|[\\^ ]+$", ""))
                .max(Comparator.comparingInt(String::length))
                .orElse("");
    }

    private static boolean group(String key, String name) {
        String form = NameForm.of(key);
        String value = NameForm.of(name);
        if (value.isEmpty()) {
            return WildCard.isUniversal(form);
        }
        long missing = Math.max(0, carets(form) - carets(value));
        return WildCard.matches(form, value + "^".repeat((int) missing))
                || WildCard.matches(form, value);
    }

    private static long carets(String name) {
        return name.chars().filter(c -> c == '^').count();
    }
}

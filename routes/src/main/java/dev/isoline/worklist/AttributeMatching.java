package dev.isoline.worklist;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Dictionary;
import dev.isoline.dicom.Uid;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * One key attribute against the values of an item, PS3.4 C.2.2.2, by its value representation. A
 * value that is not known matches no key but the empty one and {@code *} (K.2.2.1.1.1).
 */
final class AttributeMatching {

    private static final Predicate<DataSet> UNIVERSAL = item -> true;

    private AttributeMatching() {}

    /**
     * @param keys holds the attribute
     */
    static Predicate<DataSet> of(int tag, DataSet keys) throws UnusableKey {
        List<String> key = texts(tag, keys);
        return switch (Dictionary.vr(tag)) {
            case PN -> names(tag, key);
            case DA -> date(tag, key);
            case TM -> time(tag, key);
            case UI -> uids(tag, key);
            case IS, DS, US, SS, UL, SL -> number(tag, keys);
            default -> words(tag, key);
        };
    }

    private static Predicate<DataSet> words(int tag, List<String> keys) {
        if (isUniversal(keys)) {
            return UNIVERSAL;
        }
        return values(tag, value -> keys.stream().anyMatch(key -> word(key, value)));
    }

    /** Single Value and Wild Card Matching are the same where the key has no wild card. */
    private static boolean word(String key, String value) {
        return WildCard.isIn(key) ? WildCard.matches(key, value) : key.equals(value);
    }

    private static Predicate<DataSet> names(int tag, List<String> keys) {
        if (isUniversal(keys)) {
            return UNIVERSAL;
        }
        return values(
                tag, value -> keys.stream().anyMatch(key -> NameMatching.matches(key, value)));
    }

    private static Predicate<DataSet> date(int tag, List<String> keys) throws UnusableKey {
        if (keys.isEmpty()) {
            return UNIVERSAL;
        }
        DateKey key = DateKey.of(tag, only(tag, keys));
        refuseReversed(tag, key.isReversed());
        return values(tag, value -> key.matches(DateKey.date(value)));
    }

    private static Predicate<DataSet> time(int tag, List<String> keys) throws UnusableKey {
        if (keys.isEmpty()) {
            return UNIVERSAL;
        }
        TimeKey key = TimeKey.of(tag, only(tag, keys));
        refuseReversed(tag, key.isReversed());
        return values(tag, value -> key.matches(TimeKey.time(value)));
    }

    static void refuseReversed(int tag, boolean reversed) throws UnusableKey {
        if (reversed) {
            throw new UnusableKey(tag, "is a range that ends before it begins");
        }
    }

    /** List of UID Matching, PS3.4 C.2.2.2.2. */
    private static Predicate<DataSet> uids(int tag, List<String> keys) throws UnusableKey {
        if (keys.isEmpty()) {
            return UNIVERSAL;
        }
        for (String key : keys) {
            if (!Uid.isValid(key)) {
                throw new UnusableKey(tag, "is neither a UID nor a list of UIDs");
            }
        }
        return values(tag, keys::contains);
    }

    private static Predicate<DataSet> number(int tag, DataSet keys) throws UnusableKey {
        try {
            var key = keys.number(tag);
            return key.isEmpty() ? UNIVERSAL : item -> numeric(tag, item).equals(key);
        } catch (DicomException e) {
            throw new UnusableKey(tag, "is not a number");
        }
    }

    private static Optional<Double> numeric(int tag, DataSet item) {
        try {
            return item.number(tag);
        } catch (DicomException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The one value of a key that may have no more. */
    private static String only(int tag, List<String> keys) throws UnusableKey {
        if (keys.size() > 1) {
            throw new UnusableKey(tag, "has more than one value");
        }
        return keys.get(0);
    }

    private static boolean isUniversal(List<String> keys) {
        return keys.isEmpty() || keys.stream().anyMatch(WildCard::isUniversal);
    }

    private static Predicate<DataSet> values(int tag, Predicate<String> matches) {
        return item -> StoredItem.texts(tag, item).stream().anyMatch(matches);
    }

    /** The key's values; none where it is universal. */
    static List<String> texts(int tag, DataSet keys) throws UnusableKey {
        try {
            return keys.texts(tag).stream().filter(text -> !text.isEmpty()).toList();
        } catch (DicomException e) {
            throw new UnusableKey(tag, "does not fit its character set");
        }
    }
}

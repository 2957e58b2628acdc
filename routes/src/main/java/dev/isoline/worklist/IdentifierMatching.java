package dev.isoline.worklist;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Dictionary;
import dev.isoline.dicom.Element;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.Vr;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** All keys of a data set against an item: every one has to match, PS3.4 C.2.2.2. */
final class IdentifierMatching {

    private IdentifierMatching() {}

    /**
     * @param sequence the sequence the keys stand in, or {@link CarriedAttributes#ITEM}
     */
    static Predicate<DataSet> of(int sequence, DataSet keys) throws UnusableKey {
        List<Predicate<DataSet>> all = new ArrayList<>();
        for (Element key : keys.elements()) {
            if (CarriedAttributes.has(sequence, key.tag()) && !isStart(key.tag())) {
                all.add(one(key, keys));
            }
        }
        if (sequence == Tag.ScheduledProcedureStepSequence) {
            all.add(StartPeriod.of(keys).matching());
        }
        return item -> all.stream().allMatch(key -> key.test(item));
    }

    /** Start date and time are matched together. */
    private static boolean isStart(int tag) {
        return tag == Tag.ScheduledProcedureStepStartDate
                || tag == Tag.ScheduledProcedureStepStartTime;
    }

    private static Predicate<DataSet> one(Element key, DataSet keys) throws UnusableKey {
        return Dictionary.vr(key.tag()) == Vr.SQ
                ? sequence(key)
                : AttributeMatching.of(key.tag(), keys);
    }

    /** Sequence Matching, PS3.4 C.2.2.2.6: some item has to match all keys of the one. */
    private static Predicate<DataSet> sequence(Element key) throws UnusableKey {
        if (key.items().size() > 1) {
            throw new UnusableKey(key.tag(), "has more than one item");
        }
        if (key.items().isEmpty() || !asks(key.items().get(0))) {
            return item -> true;
        }
        var matching = of(key.tag(), key.items().get(0));
        return item -> item.items(key.tag()).stream().anyMatch(matching);
    }

    /** Whether anything in there has a value; malformed keys have one. */
    private static boolean asks(DataSet keys) {
        return keys.elements().stream()
                .anyMatch(e -> e.length() > 0 || e.items().stream().anyMatch(i -> asks(i)));
    }
}

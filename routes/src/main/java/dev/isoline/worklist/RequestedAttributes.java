package dev.isoline.worklist;

import dev.isoline.dicom.CharacterSet;
import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Dictionary;
import dev.isoline.dicom.Element;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.Value;
import dev.isoline.dicom.Vr;
import java.util.List;

/**
 * Cuts an item down to what was asked for, PS3.4 K.4.1.1.3.2: every attribute of the request, with
 * its value or empty; of a sequence without an item, or with an empty one, all the item has.
 */
final class RequestedAttributes {

    private RequestedAttributes() {}

    static DataSet of(DataSet request, DataSet item) {
        var answer = new DataSet();
        for (Element asked : request.elements()) {
            if (!isAboutTheRequest(asked.tag())) {
                answer.put(answer(asked, item));
            }
        }
        return answer;
    }

    /** Whether every attribute asked for is one that items may carry. */
    static boolean areCarried(int sequence, DataSet request) {
        return request.elements().stream()
                .filter(asked -> !isAboutTheRequest(asked.tag()))
                .allMatch(
                        asked ->
                                CarriedAttributes.has(sequence, asked.tag())
                                        && asked.items().stream()
                                                .allMatch(i -> areCarried(asked.tag(), i)));
    }

    /** How the request is written, group lengths and private elements are nobody's attributes. */
    private static boolean isAboutTheRequest(int tag) {
        return tag == Tag.SpecificCharacterSet
                || tag == Tag.TimezoneOffsetFromUTC
                || (tag & 0xFFFF) == 0
                || (tag >>> 16 & 1) == 1;
    }

    private static Element answer(Element asked, DataSet item) {
        Element own = item.element(asked.tag()).orElseGet(() -> empty(asked));
        var items = asked.items();
        if (items.isEmpty() || items.get(0).elements().isEmpty()) {
            return own;
        }
        var cut = own.items().stream().map(i -> of(items.get(0), i)).toList();
        return new Element(asked.tag(), Vr.SQ, new Value.Items(cut));
    }

    private static Element empty(Element asked) {
        Vr known = Dictionary.vr(asked.tag());
        Vr vr = known == Vr.UN ? asked.vr() : known;
        Value nothing =
                vr == Vr.SQ
                        ? new Value.Items(List.of())
                        : new Value.Bytes(new byte[0], CharacterSet.ISO_IR_192);
        return new Element(asked.tag(), vr, nothing);
    }
}

package dev.isoline.worklist;

import dev.isoline.dicom.CharacterSet;
import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Element;
import dev.isoline.dicom.Tag;
import java.util.Optional;

/**
 * The character set of a response: none where all of it is ASCII; UTF-8 for who asks in UTF-8; else
 * Latin-1 where that holds the text, and UTF-8 where it does not, since a name is never changed to
 * fit. PS3.4 K.4.1.1.3 leaves the choice to the SCP.
 */
final class AnswerCharacterSet {

    private static final int LAST_ASCII = 0x7F;
    private static final int LAST_LATIN = 0xFF;

    private AnswerCharacterSet() {}

    /** Empty where the response needs no Specific Character Set (0008,0005). */
    static Optional<CharacterSet> of(DataSet request, DataSet answer) {
        int highest = highest(answer);
        if (highest <= LAST_ASCII) {
            return Optional.empty();
        }
        boolean utf8 =
                StoredItem.texts(Tag.SpecificCharacterSet, request)
                        .contains(CharacterSet.ISO_IR_192.term());
        return Optional.of(
                utf8 || highest > LAST_LATIN ? CharacterSet.ISO_IR_192 : CharacterSet.ISO_IR_100);
    }

    private static int highest(DataSet dataSet) {
        int highest = 0;
        for (Element element : dataSet.elements()) {
            for (String text : StoredItem.texts(element.tag(), dataSet)) {
                highest = Math.max(highest, text.chars().max().orElse(0));
            }
            for (DataSet item : element.items()) {
                highest = Math.max(highest, highest(item));
            }
        }
        return highest;
    }
}

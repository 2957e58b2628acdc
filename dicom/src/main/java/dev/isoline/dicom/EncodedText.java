package dev.isoline.dicom;

/** Text in the character set of the data set it is written in, PS3.5 7.5.3. */
final class EncodedText {

    private EncodedText() {}

    /** The data set's own character set, else that of the data set around it. */
    static CharacterSet characterSet(DataSet dataSet, CharacterSet outer) throws DicomException {
        return dataSet.contains(Tag.SpecificCharacterSet)
                ? CharacterSet.of(dataSet.texts(Tag.SpecificCharacterSet))
                : outer;
    }

    /** The value's bytes; the very ones held wherever the character set does not change. */
    static byte[] bytes(Element element, CharacterSet set) throws DicomException {
        byte[] bytes = element.bytes();
        CharacterSet held = ((Value.Bytes) element.value()).set();
        CharacterSet wanted = usesCharacterSet(element) ? set : CharacterSet.ISO_IR_6;
        if (held == wanted || !isText(element) || isAscii(bytes)) {
            return bytes;
        }
        return wanted.encode(element.tag(), held.decode(element.tag(), bytes));
    }

    /** Also where the stream said UN of an element that is known, PS3.5 6.2.2. */
    static boolean usesCharacterSet(Element element) {
        return element.valueVr().usesCharacterSet();
    }

    private static boolean isText(Element element) {
        return element.vr().isText() || usesCharacterSet(element);
    }

    private static boolean isAscii(byte[] bytes) {
        for (byte b : bytes) {
            if (b < 0) {
                return false;
            }
        }
        return true;
    }
}

package dev.isoline.dicom;

/** How many bytes elements take when written, so that lengths can stand before their values. */
final class EncodedLength {

    private final boolean explicit;

    EncodedLength(TransferSyntax syntax) {
        this.explicit = syntax == TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
    }

    long of(DataSet dataSet, CharacterSet outer) throws DicomException {
        CharacterSet set = EncodedText.characterSet(dataSet, outer);
        long length = 0;
        for (Element element : dataSet.elements()) {
            length += ofElement(element, set);
        }
        return length;
    }

    /** Length of the value field, made even; delimiters of items included, its own not. */
    long ofValue(Element element, CharacterSet set) throws DicomException {
        if (element.value() instanceof Value.Items sequence) {
            long length = 0;
            for (DataSet item : sequence.items()) {
                length += delimited(of(item, set));
            }
            return length;
        }
        long length =
                element.value() instanceof Value.Bulk bulk
                        ? bulk.bulk().length()
                        : EncodedText.bytes(element, set).length;
        return length + (length & 1);
    }

    private long ofElement(Element element, CharacterSet set) throws DicomException {
        int header = explicit && element.vr().hasLongLength() ? 12 : 8;
        long value = ofValue(element, set);
        return element.vr() == Vr.SQ ? header - 8 + delimited(value) : header + value;
    }

    /** Tag, length and what they enclose; a delimiter where no 32-bit length can say it. */
    private static long delimited(long length) {
        return 8 + length + (length > BulkValue.MAX ? 8 : 0);
    }
}

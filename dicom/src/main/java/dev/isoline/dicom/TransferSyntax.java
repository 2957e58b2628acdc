package dev.isoline.dicom;

/** The transfer syntaxes this toolkit encodes and decodes, PS3.5 A.1 and A.2. */
public enum TransferSyntax {
    IMPLICIT_VR_LITTLE_ENDIAN("1.2.840.10008.1.2"),
    EXPLICIT_VR_LITTLE_ENDIAN("1.2.840.10008.1.2.1");

    private final String uid;

    TransferSyntax(String uid) {
        this.uid = uid;
    }

    public String uid() {
        return uid;
    }

    /** The syntax of a UID; any other one is refused by its UID. */
    public static TransferSyntax of(String uid) throws DicomException {
        for (TransferSyntax syntax : values()) {
            if (syntax.uid.equals(uid)) {
                return syntax;
            }
        }
        throw new DicomException(
                Tag.TransferSyntaxUID,
                "is "
                        + uid.replaceAll("[^0-9.]", "?")
                        + "; supported are Explicit and Implicit VR Little Endian");
    }
}

package dev.isoline.dicom.dimse;

/** Command elements, PS3.7 E.1. */
final class CommandTag {

    static final int CommandGroupLength = 0x0000_0000;
    static final int AffectedSOPClassUID = 0x0000_0002;
    static final int RequestedSOPClassUID = 0x0000_0003;
    static final int CommandField = 0x0000_0100;
    static final int MessageID = 0x0000_0110;
    static final int MessageIDBeingRespondedTo = 0x0000_0120;
    static final int Priority = 0x0000_0700;
    static final int CommandDataSetType = 0x0000_0800;
    static final int Status = 0x0000_0900;
    static final int ErrorComment = 0x0000_0902;
    static final int AffectedSOPInstanceUID = 0x0000_1000;
    static final int RequestedSOPInstanceUID = 0x0000_1001;
    static final int EventTypeID = 0x0000_1002;
    static final int ActionTypeID = 0x0000_1008;

    private CommandTag() {}
}

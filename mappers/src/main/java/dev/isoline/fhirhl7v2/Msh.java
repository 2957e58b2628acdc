package dev.isoline.fhirhl7v2;

import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.model.DataTypeException;
import ca.uhn.hl7v2.model.v251.segment.MSH;
import ca.uhn.hl7v2.parser.Parser;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;

/** MSH (HL7 v2.5.1 ch. 2.15.9) of a message the gateway sends: original mode, UTF-8. */
final class Msh {

    private static final DateTimeFormatter SECONDS =
            DateTimeFormatter.ofPattern("yyyyMMddHHmmssxx").withZone(ZoneOffset.UTC);

    /** A message without one makes its own, with all rules of validation, which takes longer. */
    private static final Parser SHARED = new DefaultHapiContext().getPipeParser();

    private Msh() {}

    static void fill(MSH msh, String code, String event, MessageContext context)
            throws DataTypeException {
        msh.getMessage().setParser(SHARED);
        // spotless:off
        msh.getMsh1_FieldSeparator().setValue("|");
        msh.getMsh2_EncodingCharacters().setValue("^~\\&");
        msh.getMsh3_SendingApplication().getHd1_NamespaceID().setValue(context.sendingApplication());
        msh.getMsh4_SendingFacility().getHd1_NamespaceID().setValue(context.sendingFacility());
        msh.getMsh5_ReceivingApplication().getHd1_NamespaceID().setValue(context.receivingApplication());
        msh.getMsh6_ReceivingFacility().getHd1_NamespaceID().setValue(context.receivingFacility());
        msh.getMsh7_DateTimeOfMessage().getTs1_Time().setValue(SECONDS.format(context.at()));
        msh.getMsh9_MessageType().getMsg1_MessageCode().setValue(code);
        msh.getMsh9_MessageType().getMsg2_TriggerEvent().setValue(event);
        msh.getMsh9_MessageType().getMsg3_MessageStructure().setValue(code + "_" + event);
        msh.getMsh10_MessageControlID().setValue(context.controlId());
        msh.getMsh11_ProcessingID().getPt1_ProcessingID().setValue("P");
        msh.getMsh12_VersionID().getVid1_VersionID().setValue("2.5.1");
        msh.getMsh18_CharacterSet(0).setValue("UNICODE UTF-8");
        // spotless:on
    }
}

package dev.isoline.hl7v2;

import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.model.Message;
import java.nio.charset.StandardCharsets;

/** HAPI's model to vertical bar encoded bytes in UTF-8, HL7 v2.5.1 ch. 2.6. */
public final class Er7Writer {

    private Er7Writer() {}

    /**
     * @param message with MSH-1 and MSH-2; every segment is ended by CR
     * @throws HL7Exception when the model holds what cannot be written
     */
    public static byte[] write(Message message) throws HL7Exception {
        return Er7Parser.SHARED.encode(message).getBytes(StandardCharsets.UTF_8);
    }
}

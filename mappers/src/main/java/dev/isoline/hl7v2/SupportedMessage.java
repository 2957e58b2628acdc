package dev.isoline.hl7v2;

import ca.uhn.hl7v2.model.Message;
import ca.uhn.hl7v2.model.v251.message.ADT_A01;
import ca.uhn.hl7v2.model.v251.message.ADT_A05;
import ca.uhn.hl7v2.model.v251.message.ADT_A39;
import ca.uhn.hl7v2.model.v251.message.OMG_O19;
import ca.uhn.hl7v2.model.v251.message.ORM_O01;
import ca.uhn.hl7v2.parser.ModelClassFactory;
import java.util.List;
import java.util.function.Function;

/**
 * What the gateway takes in. Structures: HL7 v2.5.1 ch. 3.3 and 4.4.
 *
 * @param structure MSH-9.3 from v2.3.1 on
 * @param required segments it means nothing without, in message order
 */
record SupportedMessage(
        String code,
        String event,
        String structure,
        List<String> required,
        Function<ModelClassFactory, Message> model) {

    private static final List<String> ORDER = List.of("PID", "ORC", "OBR");
    private static final List<String> PERSON = List.of("PID");
    private static final List<String> MERGE = List.of("PID", "MRG");

    // spotless:off
    static final List<SupportedMessage> ROWS = List.of(
            new SupportedMessage("ORM", "O01", "ORM_O01", ORDER,  ORM_O01::new),
            new SupportedMessage("OMG", "O19", "OMG_O19", ORDER,  OMG_O19::new),
            new SupportedMessage("ADT", "A01", "ADT_A01", PERSON, ADT_A01::new),
            new SupportedMessage("ADT", "A04", "ADT_A01", PERSON, ADT_A01::new),
            new SupportedMessage("ADT", "A08", "ADT_A01", PERSON, ADT_A01::new),
            new SupportedMessage("ADT", "A28", "ADT_A05", PERSON, ADT_A05::new),
            new SupportedMessage("ADT", "A31", "ADT_A05", PERSON, ADT_A05::new),
            new SupportedMessage("ADT", "A40", "ADT_A39", MERGE,  ADT_A39::new));
    // spotless:on

    /** Before v2.4 each ADT event had a structure of its own name; both are fine. */
    boolean allows(String messageStructure) {
        return messageStructure.isEmpty()
                || messageStructure.equals(structure)
                || messageStructure.equals(code + "_" + event);
    }
}

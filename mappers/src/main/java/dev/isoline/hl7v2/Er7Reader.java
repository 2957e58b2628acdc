package dev.isoline.hl7v2;

import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.model.Message;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import dev.isoline.order.Problem.Kind;
import java.util.ArrayList;
import java.util.List;

/**
 * Vertical bar encoded bytes to HAPI's v2.5.1 model, HL7 v2.5.1 ch. 2.6. Lenient about what senders
 * really send; what it puts right is in the warnings. Safe for use by several threads.
 */
public final class Er7Reader {

    private Er7Reader() {}

    /**
     * @param raw one message as it came
     * @throws ContentError when it cannot be read or is not for this receiver
     */
    public static Hl7Message read(byte[] raw, SenderDefaults defaults) {
        var warnings = new ArrayList<Problem>();
        var header = MessageHeader.peek(raw);
        if (!header.isReadable()) {
            throw refuse("MSH", "The message does not begin with a readable MSH segment.");
        }
        if (HeaderLine.hasByteOrderMark(raw)) {
            warnings.add(Problem.warning(Kind.SEQUENCE, "MSH", "A byte order mark was ignored."));
        }
        String text = new Er7Decoder(defaults).decode(raw, header, warnings);
        var segments = Segments.split(text, header.delimiters().field());
        var supported = ProtocolCheck.check(header, defaults, warnings);
        Segments.require(segments, supported.required());
        return new Hl7Message(header, parse(segments, header, supported), List.copyOf(warnings));
    }

    private static Message parse(
            List<String> segments, MessageHeader header, SupportedMessage supported) {
        var message = supported.model().apply(Er7Parser.SHARED.getFactory());
        String text =
                FourEncodingCharacters.apply(String.join("\r", segments), header.delimiters());
        try {
            Er7Parser.SHARED.parse(message, text);
        } catch (HL7Exception e) {
            throw refuse(segment(e), "The message could not be parsed.");
        }
        return message;
    }

    private static String segment(HL7Exception e) {
        var location = e.getLocation();
        return location == null || location.getSegmentName() == null
                ? "MSH"
                : location.getSegmentName();
    }

    private static ContentError refuse(String location, String text) {
        return new ContentError(Problem.error(Kind.SEQUENCE, location, text));
    }
}

package dev.isoline.hl7v2;

import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import dev.isoline.order.Problem.Kind;
import java.util.List;
import java.util.Set;

/** Whether MSH fits this receiver, HL7 v2.5.1 ch. 2.9.2.2: MSH-9, MSH-12, MSH-11, then MSH-10. */
final class ProtocolCheck {

    private static final Set<String> READ = Set.of("2.3", "2.3.1", "2.4", "2.5", "2.5.1");
    private static final Set<String> NEWER = Set.of("2.6", "2.7", "2.7.1", "2.8", "2.8.1", "2.8.2");
    private static final Set<String> PROCESSING_IDS = Set.of("P", "T", "D");

    private ProtocolCheck() {}

    static SupportedMessage check(
            MessageHeader header, SenderDefaults defaults, List<Problem> warnings) {
        var supported = messageType(header, warnings);
        version(header.version().isEmpty() ? defaults.version() : header.version(), warnings);
        if (!PROCESSING_IDS.contains(header.processingId())) {
            throw refuse(Kind.UNSUPPORTED_PROCESSING_ID, "MSH-11", "MSH-11 must be P, T or D.");
        }
        if (header.controlId().isEmpty()) {
            throw refuse(Kind.REQUIRED, "MSH-10", "MSH-10 (message control id) is empty.");
        }
        return supported;
    }

    private static SupportedMessage messageType(MessageHeader header, List<Problem> warnings) {
        var ofCode =
                SupportedMessage.ROWS.stream()
                        .filter(row -> row.code().equals(header.messageCode()))
                        .toList();
        if (ofCode.isEmpty()) {
            throw refuse(
                    Kind.UNSUPPORTED_MESSAGE,
                    "MSH-9.1",
                    "MSH-9.1 is a message type that is not taken here; ORM, OMG and ADT are.");
        }
        var supported =
                ofCode.stream()
                        .filter(row -> row.event().equals(event(header, ofCode, warnings)))
                        .findFirst()
                        .orElseThrow(() -> unsupportedEvent(ofCode));
        structure(header, supported, warnings);
        return supported;
    }

    /** ORM and OMG have one event only, so a sender that leaves it out is understood. */
    private static String event(
            MessageHeader header, List<SupportedMessage> ofCode, List<Problem> warnings) {
        if (!header.triggerEvent().isEmpty() || ofCode.size() > 1) {
            return header.triggerEvent();
        }
        warnings.add(
                Problem.warning(
                        Kind.REQUIRED,
                        "MSH-9.2",
                        "MSH-9.2 is empty; read as " + ofCode.get(0).event() + "."));
        return ofCode.get(0).event();
    }

    private static ContentError unsupportedEvent(List<SupportedMessage> ofCode) {
        String taken = String.join(", ", ofCode.stream().map(SupportedMessage::event).toList());
        return refuse(
                Kind.UNSUPPORTED_EVENT,
                "MSH-9.2",
                "MSH-9.2 is an event that is not taken here; " + taken + " are.");
    }

    private static void structure(
            MessageHeader header, SupportedMessage supported, List<Problem> warnings) {
        if (!supported.allows(header.messageStructure())) {
            warnings.add(
                    Problem.warning(
                            Kind.VALUE,
                            "MSH-9.3",
                            "MSH-9.3 contradicts MSH-9.1 and MSH-9.2; read as "
                                    + supported.structure()
                                    + "."));
        }
    }

    private static void version(String version, List<Problem> warnings) {
        if (NEWER.contains(version)) {
            warnings.add(
                    Problem.warning(
                            Kind.VALUE,
                            "MSH-12",
                            "MSH-12 is newer than 2.5.1; the message was read as 2.5.1."));
        } else if (!READ.contains(version)) {
            throw refuse(
                    Kind.UNSUPPORTED_VERSION,
                    "MSH-12",
                    "MSH-12 is a version that is not read here; 2.3 to 2.5.1 are.");
        }
    }

    private static ContentError refuse(Kind kind, String location, String text) {
        return new ContentError(Problem.error(kind, location, text));
    }
}

package dev.isoline.dicom.dcm4che;

import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.spi.AcceptedContext;
import dev.isoline.dicom.spi.ContextNotAccepted;
import dev.isoline.dicom.spi.Offer;
import dev.isoline.dicom.spi.OfferedContext;
import dev.isoline.dicom.spi.Role;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.dcm4che3.net.Association;
import org.dcm4che3.net.pdu.PresentationContext;
import org.dcm4che3.net.pdu.RoleSelection;

/**
 * What became of an offer, PS3.8 9.3.3.2.
 *
 * @param accepted in the order they were offered
 * @param refused reasons by abstract syntax
 */
record Contexts(List<AcceptedContext> accepted, Map<String, String> refused) {

    /** Result/Reason of a presentation context, PS3.8 table 9-18. */
    private static final List<String> REASONS =
            List.of(
                    "accepted in a transfer syntax we did not offer",
                    "rejected by the peer's user",
                    "rejected by the peer without a reason",
                    "abstract syntax not supported by the peer",
                    "transfer syntaxes not supported by the peer");

    static Contexts of(Offer offer, Association association) {
        var accepted = new ArrayList<AcceptedContext>();
        var refused = new LinkedHashMap<String, String>();
        for (int i = 0; i < offer.contexts().size(); i++) {
            OfferedContext offered = offer.contexts().get(i);
            PresentationContext answer =
                    association.getAAssociateAC().getPresentationContext(2 * i + 1);
            syntax(offered, answer)
                    .ifPresentOrElse(
                            s ->
                                    accepted.add(
                                            new AcceptedContext(
                                                    offered.abstractSyntax(),
                                                    s,
                                                    role(offered, association))),
                            () -> refused.put(offered.abstractSyntax(), reason(answer)));
        }
        return new Contexts(List.copyOf(accepted), refused);
    }

    private static Optional<TransferSyntax> syntax(
            OfferedContext offered, PresentationContext answer) {
        return offered.transferSyntaxes().stream()
                .filter(s -> answer != null && answer.isAccepted())
                .filter(s -> s.uid().equals(answer.getTransferSyntax()))
                .findFirst();
    }

    private static String reason(PresentationContext answer) {
        int result = answer == null ? PresentationContext.PROVIDER_REJECTION : answer.getResult();
        return result < REASONS.size() ? REASONS.get(result) : "result " + result;
    }

    /** A role the peer did not answer is the default one, PS3.7 D.3.3.4. */
    private static Role role(OfferedContext offered, Association association) {
        RoleSelection answer =
                association.getAAssociateAC().getRoleSelectionFor(offered.abstractSyntax());
        if (answer == null || !answer.isSCP()) {
            return Role.SCU;
        }
        return answer.isSCU() ? Role.BOTH : Role.SCP;
    }

    /** The first context of the SOP class in that role. */
    AcceptedContext of(String sopClass, Predicate<Role> role) throws ContextNotAccepted {
        return accepted.stream()
                .filter(c -> c.abstractSyntax().equals(sopClass) && role.test(c.role()))
                .findFirst()
                .orElseThrow(() -> new ContextNotAccepted(sopClass, fault(sopClass)));
    }

    private String fault(String sopClass) {
        boolean there = accepted.stream().anyMatch(c -> c.abstractSyntax().equals(sopClass));
        return there
                ? "not in the role needed"
                : refused.getOrDefault(sopClass, "it was not offered");
    }

    /** True where an object can be sent in that syntax. */
    boolean accept(String sopClass, String transferSyntax) {
        return accepted.stream()
                .filter(c -> c.abstractSyntax().equals(sopClass) && c.role().scu())
                .anyMatch(c -> c.transferSyntax().uid().equals(transferSyntax));
    }
}

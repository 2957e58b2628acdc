package dev.isoline.dicom.dimse;

import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.spi.AcceptedContext;
import dev.isoline.dicom.spi.Association;
import dev.isoline.dicom.spi.CommitmentResults;
import dev.isoline.dicom.spi.Offer;
import dev.isoline.dicom.spi.OfferedContext;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Remote;
import dev.isoline.dicom.spi.Role;
import dev.isoline.dicom.upper.PDataOutput;
import dev.isoline.dicom.upper.Pdu;
import dev.isoline.dicom.upper.Pdu.ContextResult;
import dev.isoline.dicom.upper.Pdu.ProposedContext;
import dev.isoline.dicom.upper.UpperLayer;
import dev.isoline.dicom.upper.UserInformation;
import dev.isoline.dicom.upper.UserInformation.RoleSelection;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;

/** Opens associations: an offer to an A-ASSOCIATE-RQ, and the A-ASSOCIATE-AC to what holds. */
final class Requestor {

    private static final int ACCEPTANCE = 0;

    /** Result/Reason of a presentation context, PS3.8 table 9-18. */
    private static final List<String> REASONS =
            List.of(
                    "accepted in a transfer syntax we did not offer",
                    "rejected by the peer's user",
                    "rejected by the peer without a reason",
                    "abstract syntax not supported by the peer",
                    "transfer syntaxes not supported by the peer");

    private Requestor() {}

    static Association associate(Remote remote, Offer offer, CommitmentResults results)
            throws IOException {
        UpperLayer layer = UpperLayer.to(remote);
        try {
            Pdu.AssociateAc ac = layer.associate(request(remote, offer));
            return association(remote, offer, layer, ac, results);
        } catch (IOException e) {
            layer.dispose();
            throw e;
        }
    }

    private static Pdu.AssociateRq request(Remote remote, Offer offer) {
        var contexts = new ArrayList<ProposedContext>();
        var roles = new LinkedHashSet<RoleSelection>();
        for (OfferedContext context : offer.contexts()) {
            contexts.add(
                    new ProposedContext(
                            id(contexts.size()),
                            context.abstractSyntax(),
                            context.transferSyntaxes().stream().map(TransferSyntax::uid).toList()));
            if (context.role() != Role.SCU) {
                roles.add(role(context));
            }
        }
        return new Pdu.AssociateRq(
                1,
                remote.called().value(),
                remote.calling().value(),
                Pdu.APPLICATION_CONTEXT,
                contexts,
                UserInformation.ours(remote.maxPdu().receive(), List.copyOf(roles)));
    }

    /** Odd numbers from 1. */
    private static int id(int index) {
        return 2 * index + 1;
    }

    private static RoleSelection role(OfferedContext context) {
        Role role = context.role();
        return new RoleSelection(context.abstractSyntax(), role.scu(), role.scp());
    }

    private static Association association(
            Remote remote,
            Offer offer,
            UpperLayer layer,
            Pdu.AssociateAc ac,
            CommitmentResults results) {
        var accepted = new LinkedHashMap<Integer, AcceptedContext>();
        var refused = new LinkedHashMap<String, String>();
        for (ContextResult result : ac.contexts()) {
            int index = result.id() / 2;
            if (result.id() % 2 == 1 && index < offer.contexts().size()) {
                OfferedContext offered = offer.contexts().get(index);
                judge(offered, result, ac.user().roles(), accepted, refused);
            }
        }
        var output = new PDataOutput(layer, ac.user().maxLength(), remote.maxPdu());
        return new ScuAssociation(
                layer, peer(remote, layer, ac), accepted, refused, output, results);
    }

    private static void judge(
            OfferedContext offered,
            ContextResult result,
            List<RoleSelection> roles,
            Map<Integer, AcceptedContext> accepted,
            Map<String, String> refused) {
        for (TransferSyntax syntax : offered.transferSyntaxes()) {
            if (result.result() == ACCEPTANCE && syntax.uid().equals(result.transferSyntax())) {
                Role role = role(offered, roles);
                accepted.put(
                        result.id(), new AcceptedContext(offered.abstractSyntax(), syntax, role));
                return;
            }
        }
        String reason =
                result.result() < REASONS.size()
                        ? REASONS.get(result.result())
                        : "result " + result.result();
        refused.put(offered.abstractSyntax(), reason);
    }

    /** A role the peer did not answer is the default one, PS3.7 D.3.3.4. */
    private static Role role(OfferedContext offered, List<RoleSelection> answers) {
        for (RoleSelection answer : answers) {
            if (answer.sopClass().equals(offered.abstractSyntax()) && answer.scp()) {
                return answer.scu() ? Role.BOTH : Role.SCP;
            }
        }
        return Role.SCU;
    }

    private static Peer peer(Remote remote, UpperLayer layer, Pdu.AssociateAc ac) {
        return new Peer(
                remote.calling(),
                remote.called(),
                layer.address(),
                ac.user().implementationClass(),
                ac.user().implementationVersion(),
                layer.certificate());
    }
}

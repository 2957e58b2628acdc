package dev.isoline.dicom.upper;

import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.spi.AcceptedContext;
import dev.isoline.dicom.spi.Role;
import dev.isoline.dicom.upper.Pdu.ContextResult;
import dev.isoline.dicom.upper.Pdu.ProposedContext;
import dev.isoline.dicom.upper.UserInformation.RoleSelection;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * The acceptor's answer to the presentation contexts of a request, PS3.8 7.1.1.13 and PS3.7
 * D.3.3.4.
 *
 * @param results one for each context proposed
 * @param roles answers to the roles proposed
 * @param accepted the accepted ones by id
 */
record Acceptance(
        List<ContextResult> results,
        List<RoleSelection> roles,
        Map<Integer, AcceptedContext> accepted) {

    private static final int ACCEPTANCE = 0;
    private static final int USER_REJECTION = 1;
    private static final int ABSTRACT_SYNTAX_NOT_SUPPORTED = 3;
    private static final int TRANSFER_SYNTAXES_NOT_SUPPORTED = 4;

    /**
     * @param supported the roles a requestor may have for a SOP class; empty where it is not served
     */
    static Acceptance of(Pdu.AssociateRq rq, Function<String, Optional<Role>> supported) {
        var acceptance =
                new Acceptance(new ArrayList<>(), new ArrayList<>(), new LinkedHashMap<>());
        var proposed = new LinkedHashMap<String, RoleSelection>();
        rq.user().roles().forEach(r -> proposed.put(r.sopClass(), r));
        for (ProposedContext context : rq.contexts()) {
            var role = proposed.get(context.abstractSyntax());
            acceptance.answer(context, role, supported.apply(context.abstractSyntax()));
        }
        for (RoleSelection role : proposed.values()) {
            supported.apply(role.sopClass()).ifPresent(r -> acceptance.roles.add(common(role, r)));
        }
        return acceptance;
    }

    private static RoleSelection common(RoleSelection proposed, Role supported) {
        return new RoleSelection(
                proposed.sopClass(),
                proposed.scu() && supported.scu(),
                proposed.scp() && supported.scp());
    }

    private void answer(ProposedContext context, RoleSelection proposed, Optional<Role> supported) {
        Optional<TransferSyntax> syntax = transferSyntax(context);
        if (supported.isEmpty()) {
            refuse(context, ABSTRACT_SYNTAX_NOT_SUPPORTED);
        } else if (syntax.isEmpty()) {
            refuse(context, TRANSFER_SYNTAXES_NOT_SUPPORTED);
        } else {
            role(proposed, supported.get())
                    .ifPresentOrElse(
                            role -> accept(context, syntax.get(), role),
                            () -> refuse(context, USER_REJECTION));
        }
    }

    /**
     * What the requestor is. One that proposes no role is SCU; where only an SCP is served, it is
     * taken for that, for archives that report results without role selection (common practice, no
     * source).
     */
    private static Optional<Role> role(RoleSelection proposed, Role supported) {
        if (proposed == null) {
            return Optional.of(supported.scu() ? Role.SCU : Role.SCP);
        }
        RoleSelection common = common(proposed, supported);
        if (common.scu() && common.scp()) {
            return Optional.of(Role.BOTH);
        }
        return common.scu() || common.scp()
                ? Optional.of(common.scu() ? Role.SCU : Role.SCP)
                : Optional.empty();
    }

    private static Optional<TransferSyntax> transferSyntax(ProposedContext context) {
        return context.transferSyntaxes().stream().flatMap(Acceptance::known).findFirst();
    }

    private static java.util.stream.Stream<TransferSyntax> known(String uid) {
        return Arrays.stream(TransferSyntax.values()).filter(t -> t.uid().equals(uid));
    }

    private void accept(ProposedContext context, TransferSyntax syntax, Role role) {
        results.add(new ContextResult(context.id(), ACCEPTANCE, syntax.uid()));
        accepted.put(context.id(), new AcceptedContext(context.abstractSyntax(), syntax, role));
    }

    /** The transfer syntax of a refusal is not significant, but there has to be one. */
    private void refuse(ProposedContext context, int result) {
        String syntax = TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN.uid();
        results.add(new ContextResult(context.id(), result, syntax));
    }
}

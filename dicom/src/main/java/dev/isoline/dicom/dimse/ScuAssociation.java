package dev.isoline.dicom.dimse;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.spi.AcceptedContext;
import dev.isoline.dicom.spi.Association;
import dev.isoline.dicom.spi.CommitmentRequest;
import dev.isoline.dicom.spi.CommitmentResult;
import dev.isoline.dicom.spi.CommitmentResults;
import dev.isoline.dicom.spi.Commitments;
import dev.isoline.dicom.spi.ContextNotAccepted;
import dev.isoline.dicom.spi.Matches;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Role;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.dicom.spi.SopReference;
import dev.isoline.dicom.spi.Status;
import dev.isoline.dicom.upper.PDataOutput;
import dev.isoline.dicom.upper.UpperLayer;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** The requestor's side of an association. */
final class ScuAssociation implements Association {

    private final UpperLayer layer;
    private final Peer peer;
    private final Map<Integer, AcceptedContext> accepted;
    private final Map<String, String> refused;
    private final PDataOutput output;
    private final Conversation conversation;
    private volatile boolean ended;

    ScuAssociation(
            UpperLayer layer,
            Peer peer,
            Map<Integer, AcceptedContext> accepted,
            Map<String, String> refused,
            PDataOutput output,
            CommitmentResults results) {
        this.layer = layer;
        this.peer = peer;
        this.accepted = accepted;
        this.refused = refused;
        this.output = output;
        var messages = new Messages(layer, accepted, output);
        this.conversation = new Conversation(layer, messages, peer, results);
    }

    @Override
    public Peer peer() {
        return peer;
    }

    @Override
    public List<AcceptedContext> accepted() {
        return List.copyOf(accepted.values());
    }

    @Override
    public Status echo() throws IOException {
        int context = context(SopClass.VERIFICATION, Role::scu);
        return ending(
                () -> {
                    int id = conversation.nextId();
                    var request =
                            CommandSet.request(Field.C_ECHO, id)
                                    .affected(new SopReference(SopClass.VERIFICATION, ""));
                    return conversation.ask(context, request);
                });
    }

    @Override
    public Status store(Path file) throws IOException {
        try (var object = StoredFile.open(file)) {
            int context = context(object.sopClass(), object::isIn);
            return ending(() -> new StoreScu(conversation, early()).store(context, object));
        }
    }

    @Override
    public Status store(DataSet object) throws IOException {
        SopReference instance = StoreScu.instance(object);
        int context = context(instance.sopClass(), Role::scu);
        return ending(() -> new StoreScu(conversation, early()).store(context, instance, object));
    }

    /** What arrives while we send can only be a failure where no result of a commitment may. */
    private boolean early() {
        return !accepts(SopClass.STORAGE_COMMITMENT);
    }

    @Override
    public Status find(String sopClass, DataSet keys, Matches matches) throws IOException {
        int context = context(sopClass, Role::scu);
        return ending(() -> new FindScu(conversation).find(context, sopClass, keys, matches));
    }

    @Override
    public Status requestCommitment(CommitmentRequest request) throws IOException {
        int context = context(SopClass.STORAGE_COMMITMENT, Role::scu);
        DataSet dataSet = Commitments.dataSet(request);
        return ending(
                () -> {
                    CommandSet command = CommitmentScu.request(conversation.nextId());
                    return conversation.ask(context, command, dataSet);
                });
    }

    @Override
    public boolean awaitCommitment(Duration atMost) throws IOException {
        return ending(() -> conversation.awaitEvent(atMost));
    }

    @Override
    public Status reportCommitment(CommitmentResult result) throws IOException {
        int context = context(SopClass.STORAGE_COMMITMENT, Role::scp);
        DataSet dataSet = Commitments.dataSet(result);
        return ending(
                () -> {
                    CommandSet command = CommitmentScu.report(conversation.nextId(), result);
                    return conversation.ask(context, command, dataSet);
                });
    }

    private int context(String abstractSyntax, Predicate<Role> role) throws IOException {
        return context(abstractSyntax, c -> role.test(c.role()), "not in the role needed");
    }

    /** The context a file can be sent in as it is, else any of its SOP class. */
    private int context(String sopClass, ContextPreference preference) throws IOException {
        Optional<Integer> best = find(sopClass, preference::prefers);
        return best.isPresent() ? best.get() : context(sopClass, Role::scu);
    }

    private interface ContextPreference {
        boolean prefers(AcceptedContext context);
    }

    private int context(String abstractSyntax, Predicate<AcceptedContext> fit, String unfit)
            throws IOException {
        Optional<Integer> context = find(abstractSyntax, fit);
        if (context.isPresent()) {
            return context.get();
        }
        String fault = accepts(abstractSyntax) ? unfit : "it was not offered";
        throw new ContextNotAccepted(abstractSyntax, refused.getOrDefault(abstractSyntax, fault));
    }

    private Optional<Integer> find(String abstractSyntax, Predicate<AcceptedContext> fit) {
        return accepted.entrySet().stream()
                .filter(e -> e.getValue().abstractSyntax().equals(abstractSyntax))
                .filter(e -> fit.test(e.getValue()))
                .map(Map.Entry::getKey)
                .findFirst();
    }

    private interface Operation<T> {
        T perform() throws IOException;
    }

    /** An operation that fails in its midst leaves nothing to go on with. */
    private <T> T ending(Operation<T> operation) throws IOException {
        try {
            return operation.perform();
        } catch (IOException | RuntimeException e) {
            layer.abort("an operation failed");
            throw e;
        }
    }

    @Override
    public void release() throws IOException {
        if (!ended) {
            ended = true;
            try {
                layer.release();
            } finally {
                dispose();
            }
        }
    }

    private void dispose() {
        layer.abandon();
        layer.dispose();
        output.dispose();
    }

    @Override
    public void abort() {
        layer.abort("at our user's request");
    }

    @Override
    public void close() {
        try {
            release();
        } catch (IOException gone) {
            // it has ended, which is all that was asked for
        }
    }
}

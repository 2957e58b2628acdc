package dev.isoline.dicom.dimse;

import dev.isoline.dicom.spi.AcceptedContext;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.dicom.spi.Status;
import dev.isoline.dicom.upper.AcceptedAssociation;
import dev.isoline.dicom.upper.PDataOutput;
import dev.isoline.dicom.upper.UpperLayer;
import dev.isoline.dicom.upper.Wait;
import java.io.IOException;
import java.util.Optional;

/** Serves one association: a request at a time, PS3.7 8.2 without asynchronous operations. */
final class ScpAssociation {

    private final UpperLayer layer;
    private final Peer peer;
    private final Services services;
    private final Messages messages;
    private final StoreScp store;
    private final FindScp find;
    private final CommitmentScp commitment;

    ScpAssociation(AcceptedAssociation association, Services services, PDataOutput output) {
        this.layer = association.layer();
        this.peer = association.peer();
        this.services = services;
        this.messages = new Messages(layer, association.contexts(), output);
        this.store = new StoreScp(messages, peer);
        this.find = new FindScp(messages, peer);
        this.commitment = new CommitmentScp(messages, peer, services);
    }

    /** Until the peer releases the association. */
    void serve() throws IOException {
        try {
            Optional<Message> message = messages.next(Wait.REQUEST);
            while (message.isPresent()) {
                serve(message.get());
                message = find.isRunning() ? find.next() : messages.next(Wait.REQUEST);
            }
            layer.confirmRelease();
        } finally {
            find.stop();
            commitment.stop();
        }
    }

    private void serve(Message message) throws IOException {
        CommandSet command = message.command();
        switch (command.field()) {
            case Field.C_ECHO -> echo(message);
            case Field.C_STORE -> store(message);
            case Field.C_FIND -> find(message);
            case Field.C_CANCEL -> find.cancel(command.respondsTo());
            case Field.N_ACTION -> commitment.action(message);
            case Field.N_EVENT_REPORT -> commitment.event(message);
            case Field.N_EVENT_REPORT | Field.RESPONSE -> commitment.reported(command);
            default -> unknown(message);
        }
    }

    private void echo(Message message) throws IOException {
        Status status = isOf(message, SopClass.VERIFICATION) ? echoed() : wrongClass();
        respond(message, status);
    }

    private Status echoed() {
        var provider = services.verification().orElseThrow();
        return Answer.of(() -> provider.echo(peer), Status.PROCESSING_FAILURE);
    }

    private void store(Message message) throws IOException {
        var provider = services.storage().get(abstractSyntax(message));
        if (provider == null || !message.command().hasDataSet() || !namesItsContext(message)) {
            respond(message, wrongClass());
        } else {
            store.receive(message, provider);
        }
    }

    private void find(Message message) throws IOException {
        var provider = services.find().get(abstractSyntax(message));
        if (provider == null || !message.command().hasDataSet() || !namesItsContext(message)) {
            respond(message, wrongClass());
        } else {
            find.start(message, provider);
        }
    }

    /** The Affected SOP Class UID is the abstract syntax of the context, PS3.7 9.3. */
    private boolean namesItsContext(Message message) {
        return message.command().subject().sopClass().equals(abstractSyntax(message));
    }

    private boolean isOf(Message message, String sopClass) {
        return abstractSyntax(message).equals(sopClass);
    }

    private String abstractSyntax(Message message) {
        AcceptedContext context = messages.context(message.contextId());
        return context.abstractSyntax();
    }

    private static Status wrongClass() {
        return Status.SOP_CLASS_NOT_SUPPORTED.because("not in this presentation context");
    }

    /** A response to nothing we asked is read over; a request is refused, PS3.7 annex C.5.23. */
    private void unknown(Message message) throws IOException {
        if (!message.command().isResponse()) {
            respond(message, Status.UNRECOGNIZED_OPERATION);
        }
    }

    private void respond(Message message, Status status) throws IOException {
        messages.send(message.contextId(), message.command().response(status));
    }
}

package dev.isoline.dicom.dimse;

import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.spi.CommitmentProvider;
import dev.isoline.dicom.spi.CommitmentRequest;
import dev.isoline.dicom.spi.CommitmentResult;
import dev.isoline.dicom.spi.CommitmentResults;
import dev.isoline.dicom.spi.Commitments;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.dicom.spi.SopReference;
import dev.isoline.dicom.spi.Status;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Storage commitment on an association that a peer opened, PS3.4 J.3: its requests, answered as
 * archive, and the results of ours.
 */
final class CommitmentScp {

    private static final SopReference WELL_KNOWN =
            new SopReference(SopClass.STORAGE_COMMITMENT, SopClass.STORAGE_COMMITMENT_INSTANCE);

    private final Messages messages;
    private final Peer peer;
    private final Services services;
    private final Map<Integer, CommitmentResult> unanswered = new LinkedHashMap<>();
    private int lastMessageId;

    CommitmentScp(Messages messages, Peer peer, Services services) {
        this.messages = messages;
        this.peer = peer;
        this.services = services;
    }

    /** N-ACTION-RQ. */
    void action(Message message) throws IOException {
        byte[] dataSet = messages.dataSet();
        Status fault = fault(message, CommandTag.ActionTypeID, Status.NO_SUCH_ACTION);
        if (services.commitment().isEmpty() || !fault.isSuccess()) {
            respond(message, fault.isSuccess() ? Status.SOP_CLASS_NOT_SUPPORTED : fault);
            return;
        }
        CommitmentRequest request;
        try {
            var syntax = messages.syntax(message.contextId());
            request = Commitments.request(InMemory.read(dataSet, syntax));
        } catch (DicomException e) {
            respond(message, Status.INVALID_ARGUMENT_VALUE.because(e.getMessage()));
            return;
        }
        request(message, request, services.commitment().get());
    }

    private void request(Message message, CommitmentRequest request, CommitmentProvider provider)
            throws IOException {
        Status status = Answer.of(() -> provider.request(peer, request), Status.PROCESSING_FAILURE);
        messages.send(
                message.contextId(),
                message.command()
                        .response(status)
                        .us(CommandTag.ActionTypeID, Commitments.REQUEST));
        if (status.isSuccess()) {
            Optional<CommitmentResult> result = provider.result(peer, request);
            if (result.isPresent()) {
                report(message.contextId(), result.get());
            }
        }
    }

    private void report(int contextId, CommitmentResult result) throws IOException {
        unanswered.put(++lastMessageId, result);
        messages.send(
                contextId,
                CommitmentScu.report(lastMessageId, result).withDataSet(),
                Commitments.dataSet(result));
    }

    /** N-EVENT-REPORT-RSP to a result of ours. */
    void reported(CommandSet response) {
        CommitmentResult result = unanswered.remove(response.respondsTo());
        if (result != null) {
            services.commitment().ifPresent(p -> p.reported(result, response.status()));
        }
    }

    /** N-EVENT-REPORT-RQ: the result of a request of ours. */
    void event(Message message) throws IOException {
        event(messages, peer, message, services.commitmentResults());
    }

    static void event(
            Messages messages, Peer peer, Message message, Optional<CommitmentResults> results)
            throws IOException {
        byte[] dataSet = messages.dataSet();
        int type = message.command().number(CommandTag.EventTypeID);
        boolean known = type == Commitments.ALL_COMMITTED || type == Commitments.FAILURES_EXIST;
        Status status = known ? Status.SUCCESS : Status.NO_SUCH_EVENT_TYPE;
        if (!message.command().subject().sopClass().equals(WELL_KNOWN.sopClass())
                || results.isEmpty()) {
            status = Status.SOP_CLASS_NOT_SUPPORTED;
        } else if (known) {
            status = taken(messages, peer, message, dataSet, results.get());
        }
        messages.send(
                message.contextId(),
                message.command().response(status).us(CommandTag.EventTypeID, type));
    }

    private static Status taken(
            Messages messages,
            Peer peer,
            Message message,
            byte[] dataSet,
            CommitmentResults results) {
        return Answer.of(
                () -> {
                    try {
                        var syntax = messages.syntax(message.contextId());
                        return results.result(
                                peer, Commitments.result(InMemory.read(dataSet, syntax)));
                    } catch (DicomException e) {
                        return Status.INVALID_ARGUMENT_VALUE.because(e.getMessage());
                    }
                },
                Status.PROCESSING_FAILURE);
    }

    private static Status fault(Message message, int type, Status unknownType) {
        CommandSet command = message.command();
        if (!command.subject().sopClass().equals(WELL_KNOWN.sopClass())) {
            return Status.NO_SUCH_SOP_CLASS;
        } else if (!command.subject().sopInstance().equals(WELL_KNOWN.sopInstance())) {
            return Status.NO_SUCH_INSTANCE;
        }
        return command.number(type) == Commitments.REQUEST ? Status.SUCCESS : unknownType;
    }

    /** The association has ended: whoever waits for an answer waits in vain. */
    void stop() {
        Status never = Status.PROCESSING_FAILURE.because("the association ended before");
        services.commitment()
                .ifPresent(p -> unanswered.values().forEach(r -> p.reported(r, never)));
        unanswered.clear();
    }

    private void respond(Message message, Status status) throws IOException {
        messages.send(message.contextId(), message.command().response(status));
    }
}

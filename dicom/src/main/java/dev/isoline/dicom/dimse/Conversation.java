package dev.isoline.dicom.dimse;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.spi.CommitmentResults;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Status;
import dev.isoline.dicom.upper.UpperLayer;
import dev.isoline.dicom.upper.Wait;
import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * Requests and their responses on an association of ours; a result of storage commitment that
 * arrives in between is taken and answered.
 */
final class Conversation {

    /** Message ids are 16 bits, PS3.7 table 9.3-1. */
    private static final int LAST_ID = 0xFFFF;

    private final UpperLayer layer;
    private final Messages messages;
    private final Peer peer;
    private final CommitmentResults results;
    private int lastId;

    Conversation(UpperLayer layer, Messages messages, Peer peer, CommitmentResults results) {
        this.layer = layer;
        this.messages = messages;
        this.peer = peer;
        this.results = results;
    }

    Messages messages() {
        return messages;
    }

    /** Unique among outstanding ones: there is never more than one. */
    int nextId() {
        lastId = lastId % LAST_ID + 1;
        return lastId;
    }

    /** Sends a request without data set and awaits its response. */
    Status ask(int context, CommandSet request) throws IOException {
        messages.send(context, request);
        return response(request).command().status();
    }

    /** Sends a request with a data set and awaits its response. */
    Status ask(int context, CommandSet request, DataSet dataSet) throws IOException {
        messages.send(context, request.withDataSet(), dataSet);
        return response(request).command().status();
    }

    /** The next response to this request, whose data set is still to be read. */
    Message response(CommandSet request) throws IOException {
        while (true) {
            Message message = messages.next(Wait.RESPONSE).orElseThrow(this::released);
            CommandSet command = message.command();
            boolean ours = command.field() == (request.field() | Field.RESPONSE);
            if (ours && command.respondsTo() == request.messageId()) {
                return message;
            }
            serve(message);
        }
    }

    /** Takes results of storage commitment only; false where it was something else. */
    private boolean serve(Message message) throws IOException {
        CommandSet command = message.command();
        if (command.field() == Field.N_EVENT_REPORT) {
            CommitmentScp.event(messages, peer, message, Optional.of(results));
            return true;
        }
        if (!command.isResponse()) {
            messages.skipDataSet();
            messages.send(message.contextId(), command.response(Status.UNRECOGNIZED_OPERATION));
        }
        return false;
    }

    /** False where none came in time or the peer released the association. */
    boolean awaitEvent(Duration atMost) throws IOException {
        long until = System.nanoTime() + atMost.toNanos();
        while (messages.arrives(millis(until))) {
            Optional<Message> message = messages.next(Wait.RESPONSE);
            if (message.isEmpty()) {
                layer.confirmRelease();
                return false;
            }
            if (serve(message.get())) {
                return true;
            }
        }
        return false;
    }

    /** At least one: none would wait forever. */
    private static int millis(long until) {
        long left = TimeUnit.NANOSECONDS.toMillis(until - System.nanoTime());
        return (int) Math.max(1, Math.min(left, Integer.MAX_VALUE));
    }

    private IOException released() {
        try {
            layer.confirmRelease();
        } catch (IOException e) {
            return e;
        }
        return new IOException("the peer released the association instead of responding");
    }
}

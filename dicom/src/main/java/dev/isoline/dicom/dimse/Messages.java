package dev.isoline.dicom.dimse;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DataSetWriter;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.spi.AcceptedContext;
import dev.isoline.dicom.upper.PDataOutput;
import dev.isoline.dicom.upper.Pdv;
import dev.isoline.dicom.upper.UpperLayer;
import dev.isoline.dicom.upper.Wait;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.WritableByteChannel;
import java.util.Map;
import java.util.Optional;

/**
 * DIMSE messages over the upper layer, PS3.7 6.3 and PS3.8 annex E: a command set, then a data set
 * in the same presentation context, each in fragments the last of which says so.
 */
final class Messages {

    private static final int LONGEST_COMMAND = 64 * 1024;

    /** Identifiers and references, not objects: those are streamed. */
    private static final int LONGEST_IN_MEMORY = 16 << 20;

    private static final WritableByteChannel NOWHERE =
            Channels.newChannel(java.io.OutputStream.nullOutputStream());

    private final UpperLayer layer;
    private final Map<Integer, AcceptedContext> contexts;
    private final PDataOutput output;

    /** Context whose data set is still to be read, 0 for none. */
    private int pending;

    Messages(UpperLayer layer, Map<Integer, AcceptedContext> contexts, PDataOutput output) {
        this.layer = layer;
        this.contexts = contexts;
        this.output = output;
    }

    AcceptedContext context(int id) {
        return contexts.get(id);
    }

    TransferSyntax syntax(int contextId) {
        return contexts.get(contextId).transferSyntax();
    }

    /** The next message; empty where the peer asks for release instead. */
    Optional<Message> next(Wait wait) throws IOException {
        skipDataSet();
        Optional<Pdv> first = layer.pdv(wait);
        if (first.isEmpty()) {
            return Optional.empty();
        }
        int contextId = first.get().contextId();
        if (!contexts.containsKey(contextId)) {
            throw refused("presentation context " + contextId + " was not accepted");
        }
        var bytes = new ByteArrayOutputStream();
        fragments(first.get(), true, Channels.newChannel(bytes), LONGEST_COMMAND);
        var message = new Message(contextId, decode(bytes.toByteArray()));
        pending = message.command().hasDataSet() ? contextId : 0;
        return Optional.of(message);
    }

    private CommandSet decode(byte[] bytes) throws IOException {
        try {
            return CommandSet.decode(bytes);
        } catch (InvalidMessage e) {
            throw refused(e.getMessage());
        }
    }

    /** Streams the data set of the last message. */
    void dataSet(WritableByteChannel sink) throws IOException {
        dataSet(sink, Long.MAX_VALUE);
    }

    private void dataSet(WritableByteChannel sink, long most) throws IOException {
        int contextId = pending;
        pending = 0;
        Pdv first = layer.pdv(Wait.RESPONSE).orElseThrow(Messages::releasedEarly);
        if (first.contextId() != contextId) {
            throw refused("a data set in another presentation context");
        }
        fragments(first, false, sink, most);
    }

    /** The data set of the last message, in memory; empty where it has none. */
    byte[] dataSet() throws IOException {
        var bytes = new ByteArrayOutputStream();
        if (pending != 0) {
            dataSet(Channels.newChannel(bytes), LONGEST_IN_MEMORY);
        }
        return bytes.toByteArray();
    }

    /** Reads over what is left of the last message. */
    void skipDataSet() throws IOException {
        if (pending != 0) {
            dataSet(NOWHERE);
        }
    }

    private void fragments(Pdv first, boolean command, WritableByteChannel sink, long most)
            throws IOException {
        long left = most;
        for (Pdv pdv = first; ; pdv = following(pdv)) {
            if (pdv.command() != command) {
                throw refused("a fragment of a " + (command ? "data" : "command") + " set");
            }
            left -= transfer(sink, left);
            if (pdv.last()) {
                return;
            }
        }
    }

    private Pdv following(Pdv pdv) throws IOException {
        Pdv next = layer.pdv(Wait.RESPONSE).orElseThrow(Messages::releasedEarly);
        if (next.contextId() != pdv.contextId()) {
            throw refused("fragments of two messages mixed");
        }
        return next;
    }

    private long transfer(WritableByteChannel sink, long most) throws IOException {
        long count = 0;
        for (ByteBuffer part = layer.fragment(); part.hasRemaining(); part = layer.fragment()) {
            count += part.remaining();
            if (count > most) {
                throw refused("a command set or identifier of unreasonable length");
            }
            while (part.hasRemaining()) {
                sink.write(part);
            }
        }
        return count;
    }

    private IOException refused(String fault) throws IOException {
        return layer.refuse(fault);
    }

    private static IOException releasedEarly() {
        return new IOException("the peer released the association within a message");
    }

    /** Sends a message without data set. */
    void send(int contextId, CommandSet command) throws IOException {
        try (PDataOutput out = output.start(contextId, true)) {
            out.write(ByteBuffer.wrap(command.encode()));
        }
    }

    /**
     * Sends a message with a data set in the syntax of its context. It is encoded before anything
     * is sent: one that cannot be leaves the association as it was.
     */
    void send(int contextId, CommandSet command, DataSet dataSet) throws IOException {
        var bytes = new ByteArrayOutputStream();
        new DataSetWriter(Channels.newChannel(bytes), syntax(contextId)).write(dataSet);
        try (PDataOutput out = sendWithData(contextId, command)) {
            out.write(ByteBuffer.wrap(bytes.toByteArray()));
        }
    }

    /** Sends a command set; the data set is to be written, and closed, by the caller. */
    PDataOutput sendWithData(int contextId, CommandSet command) throws IOException {
        send(contextId, command.withDataSet());
        return output.start(contextId, false);
    }

    /** True where something arrives in time. */
    boolean arrives(int millis) throws IOException {
        return layer.arrives(millis);
    }

    /** True where the association has ended otherwise than by release. */
    boolean ended() {
        return layer.ended();
    }

    /** True where the peer is known to have answered already. */
    boolean answered() throws IOException {
        return layer.readable();
    }
}

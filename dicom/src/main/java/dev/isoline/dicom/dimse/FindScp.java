package dev.isoline.dicom.dimse;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.spi.FindProvider;
import dev.isoline.dicom.spi.FindRequest;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Pending;
import dev.isoline.dicom.spi.Status;
import dev.isoline.dicom.upper.Wait;
import java.io.IOException;
import java.util.Optional;

/**
 * C-FIND as SCP, PS3.7 9.1.2. The provider runs on a thread of its own, so that a C-CANCEL, a
 * release or a broken connection is seen while it works; one request at a time.
 */
final class FindScp {

    /** How soon the end of a query is seen; in milliseconds. */
    private static final int LOOK_EVERY = 500;

    private final Messages messages;
    private final Peer peer;
    private Thread running;
    private volatile Query query;

    FindScp(Messages messages, Peer peer) {
        this.messages = messages;
        this.peer = peer;
    }

    boolean isRunning() {
        return running != null && running.isAlive();
    }

    void start(Message message, FindProvider provider) throws IOException {
        byte[] identifier = messages.dataSet();
        DataSet keys;
        try {
            keys = InMemory.read(identifier, messages.syntax(message.contextId()));
        } catch (DicomException e) {
            Status status = Status.UNABLE_TO_PROCESS.because(e.getMessage());
            messages.send(message.contextId(), message.command().response(status));
            return;
        }
        var request = new FindRequest(peer, message.command().subject().sopClass(), keys);
        query = new Query(message);
        running = new Thread(() -> query.run(provider, request), "dicom-find");
        running.setDaemon(true);
        running.start();
    }

    /**
     * The next message while a query runs; a request among them waits for its end, and a release
     * cancels it.
     */
    Optional<Message> next() throws IOException {
        while (isRunning() && !messages.arrives(LOOK_EVERY)) {
            // the idle timer must not run while the peer is waiting for us
        }
        Optional<Message> message = messages.next(Wait.REQUEST);
        boolean cancels = message.filter(m -> m.command().field() == Field.C_CANCEL).isPresent();
        if (message.isEmpty()) {
            query.cancelled = true;
        }
        if (!cancels) {
            join();
        }
        return message;
    }

    void cancel(int messageId) {
        if (query != null && query.message.command().messageId() == messageId) {
            query.cancelled = true;
        }
    }

    /** The association has ended. */
    void stop() {
        if (query != null) {
            query.cancelled = true;
        }
        join();
    }

    private void join() {
        try {
            if (running != null) {
                running.join();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** One request being answered. */
    private final class Query implements Pending {

        private final Message message;
        private volatile boolean cancelled;

        Query(Message message) {
            this.message = message;
        }

        void run(FindProvider provider, FindRequest request) {
            Status end = Answer.of(() -> answer(provider, request), Status.UNABLE_TO_PROCESS);
            try {
                messages.send(message.contextId(), message.command().response(end));
            } catch (IOException gone) {
                // the reading thread has seen it too and says so
            }
        }

        /** What a provider throws because the association has ended is no failure of its own. */
        private Status answer(FindProvider provider, FindRequest request) throws IOException {
            try {
                return provider.find(request, this);
            } catch (IOException e) {
                if (messages.ended()) {
                    return Status.CANCEL;
                }
                throw e;
            }
        }

        @Override
        public boolean send(DataSet match, Status status) throws IOException {
            if (cancelled) {
                return false;
            }
            messages.send(
                    message.contextId(), message.command().response(status).withDataSet(), match);
            return true;
        }

        @Override
        public boolean cancelled() {
            return cancelled || messages.ended();
        }
    }
}

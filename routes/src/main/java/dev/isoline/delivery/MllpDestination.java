package dev.isoline.delivery;

import dev.isoline.ledger.DeliveryTable.NewDelivery;
import dev.isoline.mllp.MllpClient;
import java.io.IOException;
import java.net.SocketTimeoutException;
import java.time.Duration;

/**
 * Sends HL7 v2 messages over one MLLP connection, kept open between them; the next message goes out
 * after the answer to the one before.
 */
public final class MllpDestination implements Destination {

    private final String host;
    private final int port;
    private final Duration timeout;
    private volatile MllpClient connection;

    public MllpDestination(String host, int port, Duration timeout) {
        this.host = host;
        this.port = port;
        this.timeout = timeout;
    }

    @Override
    public int parallel() {
        return 1;
    }

    @Override
    public synchronized Verdict send(NewDelivery delivery) throws IOException {
        byte[] answer = exchange(delivery.payload());
        Verdict verdict = Acknowledgement.judge(delivery.payload(), answer);
        if (verdict.outcome() == Verdict.Outcome.RETRY) {
            // It may have answered another message: start afresh.
            close();
        }
        return verdict;
    }

    private byte[] exchange(byte[] message) throws IOException {
        boolean kept = connection != null;
        try {
            return connected().send(message);
        } catch (SocketTimeoutException e) {
            close();
            throw e;
        } catch (IOException e) {
            close();
            if (!kept) {
                throw e;
            }
        }
        // The partner had given the idle connection up: the same bytes again on a new one.
        return exchange(message);
    }

    private MllpClient connected() throws IOException {
        if (connection == null) {
            connection = MllpClient.connect(host, port, timeout);
        }
        return connection;
    }

    /** Not synchronized: it must be able to end a wait for an answer. */
    @Override
    public void close() {
        MllpClient open = connection;
        connection = null;
        if (open != null) {
            try {
                open.close();
            } catch (IOException e) {
                // It is of no more use either way.
            }
        }
    }
}

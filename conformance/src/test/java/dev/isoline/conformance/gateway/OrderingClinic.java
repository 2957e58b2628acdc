package dev.isoline.conformance.gateway;

import dev.isoline.conformance.partner.ClinicMllp;
import java.io.IOException;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A clinic on one connection: sends order after order, each when the last is answered. On the next
 * connection it first sends the last two again: one was not answered, and one was.
 */
final class OrderingClinic {

    private static final Duration ANSWER = Duration.ofSeconds(60);
    private static final int AGAIN = 2;

    private final int connection;
    private final Map<Order, byte[]> answers = new ConcurrentHashMap<>();
    private final Map<Order, byte[]> repeated = new ConcurrentHashMap<>();
    private int next;

    OrderingClinic(int connection) {
        this.connection = connection;
    }

    /** Answers by order, to be read at any time. */
    Map<Order, byte[]> answers() {
        return answers;
    }

    /** Second answers to orders that had been answered before the connection broke. */
    Map<Order, byte[]> repeated() {
        return repeated;
    }

    /** Until the connection breaks. */
    void sendUntilCutOff(int port) {
        try {
            sendAll(port, Integer.MAX_VALUE);
        } catch (IOException e) {
            // killed, as the test wants it
        }
    }

    void sendAll(int port, int count) throws IOException {
        try (var mllp = new ClinicMllp(port, ANSWER)) {
            for (int i = Math.max(0, next - AGAIN); i < next; i++) {
                again(mllp, Order.of(connection, i));
            }
            for (int i = 0; i < count; i++) {
                Order order = Order.of(connection, next++);
                answers.put(order, mllp.send(order.message()));
            }
        }
    }

    private void again(ClinicMllp mllp, Order order) throws IOException {
        byte[] answer = mllp.send(order.message());
        if (answers.putIfAbsent(order, answer) != null) {
            repeated.put(order, answer);
        }
    }
}

package dev.isoline.mllp;

import java.net.ServerSocket;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.apache.camel.builder.RouteBuilder;
import org.apache.camel.impl.DefaultCamelContext;

/** A camel-netty listener with the MLLP handlers; answers each message with {@code ack:} and it. */
final class MllpRoute implements AutoCloseable {

    static final Duration IDLE = Duration.ofMillis(700);
    static final int MAX_FRAME_BYTES = 5000;

    final List<byte[]> received = new CopyOnWriteArrayList<>();
    final int port;
    private final DefaultCamelContext camel = new DefaultCamelContext();

    MllpRoute() throws Exception {
        try (var free = new ServerSocket(0)) {
            port = free.getLocalPort();
        }
        camel.getRegistry().bind("idle", MllpHandlers.idle(IDLE));
        camel.getRegistry().bind("decoder", MllpHandlers.decoder(MAX_FRAME_BYTES));
        camel.getRegistry().bind("encoder", MllpHandlers.encoder());
        camel.addRoutes(route());
        camel.start();
    }

    private RouteBuilder route() {
        return new RouteBuilder() {
            @Override
            public void configure() {
                from("netty:tcp://127.0.0.1:"
                                + port
                                + "?sync=true&decoders=#idle,#decoder&encoders=#encoder")
                        .process(e -> received.add(e.getMessage().getBody(byte[].class)))
                        .process(
                                e ->
                                        e.getMessage()
                                                .setBody(
                                                        answer(received.get(received.size() - 1))));
            }
        };
    }

    static byte[] answer(byte[] message) {
        byte[] answer = new byte[message.length + 4];
        System.arraycopy(new byte[] {'a', 'c', 'k', ':'}, 0, answer, 0, 4);
        System.arraycopy(message, 0, answer, 4, message.length);
        return answer;
    }

    @Override
    public void close() {
        camel.stop();
    }
}

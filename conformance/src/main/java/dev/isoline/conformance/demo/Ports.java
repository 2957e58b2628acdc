package dev.isoline.conformance.demo;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;

/** Free loopback ports for a process that has to be told its ports before it starts. */
final class Ports {

    private Ports() {}

    /** Another process could take it in between; the gateway then says so and the demo ends. */
    static int free() throws IOException {
        try (var socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }
}

package dev.isoline.dicom.spi;

import java.util.Optional;

/**
 * A remote application entity and how to reach it.
 *
 * @param host name or address
 * @param port its TCP port
 * @param called its title
 * @param calling the title we call ourselves
 * @param maxPdu maximum lengths both ways
 * @param timeouts how long to wait for what
 * @param tls present where the connection is secured
 */
public record Remote(
        String host,
        int port,
        AeTitle called,
        AeTitle calling,
        MaxPdu maxPdu,
        Timeouts timeouts,
        Optional<Tls> tls) {

    /** Plain TCP with default lengths and timeouts. */
    public static Remote of(String host, int port, AeTitle called, AeTitle calling) {
        return new Remote(
                host, port, called, calling, MaxPdu.DEFAULT, Timeouts.DEFAULT, Optional.empty());
    }

    public Remote with(MaxPdu other) {
        return new Remote(host, port, called, calling, other, timeouts, tls);
    }

    public Remote with(Timeouts other) {
        return new Remote(host, port, called, calling, maxPdu, other, tls);
    }

    public Remote with(Tls other) {
        return new Remote(host, port, called, calling, maxPdu, timeouts, Optional.of(other));
    }
}

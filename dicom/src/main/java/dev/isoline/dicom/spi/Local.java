package dev.isoline.dicom.spi;

import java.util.Optional;

/**
 * An application entity of ours that listens.
 *
 * @param title its title
 * @param host name or address of the interface to listen on
 * @param port TCP port, 0 for one the system gives
 * @param admission whom it lets in, and how many at once
 * @param maxPdu maximum lengths both ways
 * @param timeouts how long to wait for what
 * @param tls present where connections are secured
 */
public record Local(
        AeTitle title,
        String host,
        int port,
        Admission admission,
        MaxPdu maxPdu,
        Timeouts timeouts,
        Optional<Tls> tls) {

    /** Plain TCP, open to every caller, with default lengths and timeouts. */
    public static Local of(AeTitle title, String host, int port) {
        return new Local(
                title,
                host,
                port,
                Admission.ANYBODY,
                MaxPdu.DEFAULT,
                Timeouts.DEFAULT,
                Optional.empty());
    }

    public Local with(Admission other) {
        return new Local(title, host, port, other, maxPdu, timeouts, tls);
    }

    public Local with(MaxPdu other) {
        return new Local(title, host, port, admission, other, timeouts, tls);
    }

    public Local with(Timeouts other) {
        return new Local(title, host, port, admission, maxPdu, other, tls);
    }

    public Local with(Tls other) {
        return new Local(title, host, port, admission, maxPdu, timeouts, Optional.of(other));
    }
}

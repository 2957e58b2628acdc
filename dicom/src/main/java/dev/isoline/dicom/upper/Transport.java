package dev.isoline.dicom.upper;

import java.io.IOException;
import java.net.InetAddress;
import java.net.SocketTimeoutException;
import java.nio.ByteBuffer;
import java.util.Optional;

/** A transport connection, PS3.8 9.1: blocking, one reader and one writer at a time. */
interface Transport {

    /** Connects where this side asked for it, and agrees on TLS where it is used. */
    void open() throws IOException;

    /** Reads some bytes; -1 where the peer sends no more. */
    int read(ByteBuffer target) throws IOException;

    /**
     * Reads some bytes, but waits only so long.
     *
     * @throws SocketTimeoutException where none came; the connection is as it was
     */
    int read(ByteBuffer target, int millis) throws IOException;

    /** Writes some bytes. */
    void write(ByteBuffer source) throws IOException;

    /** True where bytes are known to have arrived. */
    boolean readable() throws IOException;

    InetAddress address();

    /** Subject of the certificate the peer showed. */
    Optional<String> certificate();

    /** Makes a waiting read return -1; from any thread. */
    void shutdownInput();

    /** Closes in order, without lingering. */
    void close();

    /** Closes at once, whatever another thread is doing with it; from any thread. */
    void abandon();
}

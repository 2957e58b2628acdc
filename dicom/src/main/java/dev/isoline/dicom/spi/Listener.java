package dev.isoline.dicom.spi;

import java.net.InetSocketAddress;

/** An application entity that accepts associations. */
public interface Listener extends AutoCloseable {

    /** Where it listens; the port is the one given by the system where 0 was asked for. */
    InetSocketAddress address();

    /** Associations open now. */
    int associations();

    /** Accepts no more, aborts what is open and returns when all of it has ended. */
    @Override
    void close();
}

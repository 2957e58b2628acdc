package dev.isoline.dicom.upper;

import dev.isoline.dicom.spi.Local;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/** Accepts connections, one thread for each; a bad one ends alone. */
public final class Server implements AutoCloseable {

    /** Connections that are no association yet, or to be told that there are too many. */
    private static final int WAITING = 64;

    private static final int BACKLOG = 128;

    /** For the peers to close after they were told, before it is done without them. */
    private static final long PATIENCE = TimeUnit.SECONDS.toMillis(2);

    private final Local local;
    private final AssociationHandler handler;
    private final ServerSocketChannel socket;
    private final Semaphore associations;
    private final Set<Acceptor> open = ConcurrentHashMap.newKeySet();
    private final Thread thread;

    /** Listens; connections are accepted from now on. */
    public Server(Local local, AssociationHandler handler) throws IOException {
        this.local = local;
        this.handler = handler;
        this.associations = new Semaphore(local.admission().associations());
        this.socket = ServerSocketChannel.open();
        socket.setOption(StandardSocketOptions.SO_REUSEADDR, true);
        bind();
        this.thread = thread("listener", this::acceptAll);
        thread.start();
    }

    private void bind() throws IOException {
        try {
            socket.bind(new InetSocketAddress(local.host(), local.port()), BACKLOG);
        } catch (IOException e) {
            socket.close();
            // Without its cause: of a chain, who starts the program is told the innermost message.
            throw new IOException(
                    "cannot listen on "
                            + local.host()
                            + ":"
                            + local.port()
                            + ": "
                            + e.getMessage());
        }
    }

    public InetSocketAddress address() {
        return (InetSocketAddress) socket.socket().getLocalSocketAddress();
    }

    /** Associations open now. */
    public int associations() {
        return local.admission().associations() - associations.availablePermits();
    }

    private void acceptAll() {
        while (socket.isOpen()) {
            try {
                accept(socket.accept());
            } catch (IOException e) {
                pause(); // closed, or out of file descriptors: the next one may do
            }
        }
    }

    private void accept(SocketChannel connection) {
        if (open.size() >= local.admission().associations() + WAITING) {
            Quietly.run(connection::close);
            return;
        }
        var acceptor = new Acceptor(local, handler, associations, connection);
        open.add(acceptor);
        Thread running = thread("association", () -> run(acceptor));
        acceptor.thread(running);
        running.start();
    }

    private void run(Acceptor acceptor) {
        try {
            acceptor.run();
        } finally {
            open.remove(acceptor);
        }
    }

    private Thread thread(String what, Runnable task) {
        var created = new Thread(task, "dicom-" + local.title() + "-" + what);
        created.setDaemon(true);
        return created;
    }

    private static void pause() {
        try {
            Thread.sleep(20);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Accepts no more, aborts what is open and returns when all of it has ended. */
    @Override
    public void close() {
        Quietly.run(socket::close);
        open.forEach(Acceptor::abort);
        long until = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(PATIENCE);
        open.forEach(acceptor -> acceptor.join(until));
        open.forEach(Acceptor::abandon);
        open.forEach(acceptor -> acceptor.join(System.nanoTime() + Long.MAX_VALUE / 4));
        join(thread, System.nanoTime() + Long.MAX_VALUE / 4);
    }

    /** Waits for a thread, which may be this one, until a time. */
    static void join(Thread thread, long until) {
        long millis = TimeUnit.NANOSECONDS.toMillis(until - System.nanoTime());
        if (thread != Thread.currentThread() && millis > 0) {
            try {
                thread.join(millis);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }
}

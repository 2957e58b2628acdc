package dev.isoline.recordings;

import java.io.Closeable;
import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.channels.FileChannel;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;

/**
 * Forces a file to the disk bit by bit while it is written, so that little is left to wait for at
 * its end.
 */
final class EarlyForce implements Closeable {

    private static final long PAUSE_MILLIS = 20;

    private final FileChannel channel;
    private final CountDownLatch closed = new CountDownLatch(1);
    private final FutureTask<Void> forcing = new FutureTask<>(this::force);

    EarlyForce(FileChannel channel) {
        this.channel = channel;
        var thread = new Thread(forcing, "early-force");
        thread.setDaemon(true);
        thread.start();
    }

    private Void force() throws IOException, InterruptedException {
        while (!closed.await(PAUSE_MILLIS, TimeUnit.MILLISECONDS)) {
            channel.force(false);
        }
        return null;
    }

    /** Ends the forcing. A fault of the disk is told once only: it has to reach the writer here. */
    @Override
    public void close() throws IOException {
        closed.countDown();
        try {
            forcing.get();
        } catch (ExecutionException e) {
            throw e.getCause() instanceof IOException io ? io : new IOException(e.getCause());
        } catch (InterruptedException e) {
            throw new InterruptedIOException();
        }
    }
}

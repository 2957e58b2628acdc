package dev.isoline.ledger;

import java.util.concurrent.CompletableFuture;
import java.util.function.Function;

/**
 * The store of everything Isoline has promised. Writing is group commit: one writer runs the
 * waiting units of work in one transaction and completes their futures when it is on disk.
 */
public interface Ledger extends AutoCloseable {

    /**
     * Queues a unit of work. It may run more than once, so it must touch nothing but the tables.
     *
     * @return completes after the commit that holds the work; fails alone, with what the work
     *     threw, when the work throws: its changes are undone and those of its neighbours stand
     */
    <T> CompletableFuture<T> write(Function<Tables, T> work);

    /** Runs a query on what is committed. */
    <T> T read(Function<Tables, T> query);

    @Override
    void close();
}

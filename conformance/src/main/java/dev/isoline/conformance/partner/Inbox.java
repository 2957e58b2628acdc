package dev.isoline.conformance.partner;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** What a partner has received, in order; others may wait for something to arrive. */
public final class Inbox<T> {

    private final List<T> received = new ArrayList<>();

    synchronized void add(T item) {
        received.add(item);
        notifyAll();
    }

    public synchronized List<T> all() {
        return List.copyOf(received);
    }

    /** The first item, old or new, that is wanted; empty when none came in time. */
    public synchronized Optional<T> await(Predicate<T> wanted, Duration atMost)
            throws InterruptedException {
        long end = System.nanoTime() + atMost.toNanos();
        while (true) {
            Optional<T> found = received.stream().filter(wanted).findFirst();
            long left = (end - System.nanoTime()) / 1_000_000;
            if (found.isPresent() || left <= 0) {
                return found;
            }
            wait(left);
        }
    }
}

package dev.isoline.dicom.upper;

import dev.isoline.dicom.spi.Timeouts;
import java.util.Optional;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;

/**
 * The timers of an association, of which one runs at a time. When it expires, the connection is
 * closed (ARTIM), or first its input, so that its reader can still send an A-ABORT.
 *
 * <p>Starting and stopping costs nothing but a lock: an alarm once set stays, and looks when it
 * rings.
 */
final class Watch {

    /** For the A-ABORT after a timer has expired. */
    private static final long GRACE = TimeUnit.SECONDS.toNanos(2);

    private static final ScheduledThreadPoolExecutor CLOCK = clock();

    private final Transport transport;
    private final Timeouts timeouts;
    private Wait wait = Wait.FREELY;
    private long due;
    private Future<?> alarm;
    private long alarmAt;
    private volatile Wait expired;

    Watch(Transport transport, Timeouts timeouts) {
        this.transport = transport;
        this.timeouts = timeouts;
    }

    private static ScheduledThreadPoolExecutor clock() {
        var clock =
                new ScheduledThreadPoolExecutor(
                        1,
                        task -> {
                            var thread = new Thread(task, "dicom-timers");
                            thread.setDaemon(true);
                            return thread;
                        });
        clock.setRemoveOnCancelPolicy(true);
        return clock;
    }

    /** Starts the timer anew; while ARTIM runs, no other timer does. */
    synchronized void start(Wait next) {
        if (wait == Wait.ARTIM && next != Wait.ARTIM) {
            return;
        }
        wait = next;
        long limit = next.limit(timeouts).toNanos();
        if (limit == 0) {
            wait = Wait.FREELY;
        } else {
            due = System.nanoTime() + limit;
            ringBy(due);
        }
    }

    /** Stops the timer if it is the one that runs. */
    synchronized void stop(Wait which) {
        wait = wait == which ? Wait.FREELY : wait;
    }

    /** Nothing will ring any more. */
    synchronized void end() {
        wait = Wait.FREELY;
        if (alarm != null) {
            alarm.cancel(false);
            alarm = null;
        }
    }

    /** The timer that expired, if one has. */
    Optional<Wait> expired() {
        return Optional.ofNullable(expired);
    }

    Timeouts timeouts() {
        return timeouts;
    }

    private void ringBy(long time) {
        if (alarm != null && alarmAt - time <= 0) {
            return;
        }
        if (alarm != null) {
            alarm.cancel(false);
        }
        alarmAt = time;
        alarm = CLOCK.schedule(this::ring, time - System.nanoTime(), TimeUnit.NANOSECONDS);
    }

    private synchronized void ring() {
        alarm = null;
        if (wait == Wait.FREELY) {
            return;
        }
        if (due - System.nanoTime() > 0) {
            ringBy(due);
        } else {
            expire();
        }
    }

    private void expire() {
        expired = expired == null ? wait : expired;
        if (wait.closesAtOnce()) {
            transport.abandon();
        } else {
            transport.shutdownInput();
            CLOCK.schedule(transport::abandon, GRACE, TimeUnit.NANOSECONDS);
        }
        wait = Wait.FREELY;
    }
}

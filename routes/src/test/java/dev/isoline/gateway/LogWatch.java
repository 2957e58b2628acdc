package dev.isoline.gateway;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.ThrowableProxyUtil;
import ch.qos.logback.core.AppenderBase;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.slf4j.LoggerFactory;

/** Listens to everything that is logged, stack traces with their messages included. */
final class LogWatch extends AppenderBase<ILoggingEvent> {

    private final List<String> lines = new CopyOnWriteArrayList<>();

    /** To be called before each test: a start of the application throws other listeners out. */
    void listen() {
        var root = (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
        setContext(root.getLoggerContext());
        start();
        if (!root.isAttached(this)) {
            root.addAppender(this);
        }
    }

    /** Lines that tell something of a patient. */
    List<String> disclosures() {
        return lines.stream().filter(Secrets::areIn).toList();
    }

    /** Forgets a line that a test wrote itself. */
    void forgive(String beginning) {
        lines.removeIf(line -> line.startsWith(beginning));
    }

    List<String> lines() {
        return List.copyOf(lines);
    }

    @Override
    protected void append(ILoggingEvent event) {
        String fault =
                event.getThrowableProxy() == null
                        ? ""
                        : ThrowableProxyUtil.asString(event.getThrowableProxy());
        lines.add(event.getFormattedMessage() + " " + fault);
    }
}

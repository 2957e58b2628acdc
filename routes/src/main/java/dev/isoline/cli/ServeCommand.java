package dev.isoline.cli;

import dev.isoline.app.IsolineApplication;
import dev.isoline.fhirapi.FhirValidation;
import dev.isoline.flow.Hl7WarmUp;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code serve}: runs the gateway until it is told to stop. */
@Command(
        name = "serve",
        mixinStandardHelpOptions = true,
        description = "Runs the gateway; docs/configuration.md describes the file.")
final class ServeCommand implements Callable<Integer> {

    /** Not an exit code: the server's threads keep the process alive. */
    static final int SERVING = -1;

    @Option(names = "--config", paramLabel = "FILE", description = "YAML configuration file.")
    private Path config;

    @Option(
            names = "--until-ready",
            description =
                    "Stop as soon as the gateway is ready: tries a configuration, and a build learns"
                            + " which classes a start needs.")
    private boolean untilReady;

    @Override
    public Integer call() {
        if (config != null && !Files.isReadable(config)) {
            System.err.println("isoline: the configuration file cannot be read: " + config);
            return 2;
        }
        warmUp();
        try {
            Closeable gateway = IsolineApplication.start(settings());
            if (untilReady) {
                gateway.close();
            }
            return untilReady ? 0 : SERVING;
        } catch (IOException | RuntimeException e) {
            System.err.println("isoline: the gateway could not start: " + reason(e));
            return 3;
        }
    }

    /** What needs no part of the gateway begins before there is one. */
    private static void warmUp() {
        new Thread(FhirValidation::warming, "warm-up").start();
        new Thread(Hl7WarmUp::warming, "warm-up").start();
    }

    private String settings() {
        return config == null
                ? "spring.config.additional-location="
                : "spring.config.additional-location=" + config.toAbsolutePath().toUri();
    }

    /** The innermost message says which setting or port is at fault. */
    private static String reason(Throwable fault) {
        Throwable cause = fault;
        while (cause.getCause() != null) {
            cause = cause.getCause();
        }
        return cause.getMessage();
    }
}

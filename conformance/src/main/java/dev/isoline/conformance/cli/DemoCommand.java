package dev.isoline.conformance.cli;

import dev.isoline.conformance.demo.Demo;
import dev.isoline.conformance.demo.DemoFailure;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code ./isoline demo [--out DIR]}: exit 0 only when all of it held. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description = {
            "The whole round trip with simulated partners on free loopback ports: orders in,",
            "recordings in, results out; every message and object is written to the folder and",
            "judged by reference implementations, every value compared with the known truth."
        })
final class DemoCommand implements Callable<Integer> {

    @Option(
            names = "--out",
            paramLabel = "DIR",
            defaultValue = "target/demo",
            description = "Folder for everything that is exchanged; default ${DEFAULT-VALUE}.")
    private Path folder;

    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws IOException, InterruptedException {
        PrintWriter out = spec.commandLine().getOut();
        try {
            return report(new Demo(launcher(), out).run(folder), out);
        } catch (DemoFailure e) {
            throw new ParameterException(spec.commandLine(), "isoline: " + e.getMessage(), e);
        }
    }

    private Path launcher() throws IOException {
        String launcher = System.getProperty("isoline.launcher");
        if (launcher == null || !Files.isExecutable(Path.of(launcher))) {
            throw new IOException("start the demo with ./isoline demo, it runs the gateway by it");
        }
        return Path.of(launcher);
    }

    private int report(List<String> failures, PrintWriter out) {
        if (failures.isEmpty()) {
            out.println("All of it held. Everything lies in " + folder + "; see README.txt there.");
        } else {
            out.println("%d things did not hold:".formatted(failures.size()));
            failures.forEach(failure -> out.println("  - " + failure));
        }
        out.flush();
        return failures.isEmpty() ? 0 : 1;
    }
}

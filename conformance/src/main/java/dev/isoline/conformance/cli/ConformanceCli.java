package dev.isoline.conformance.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The commands that judge: {@code ./isoline check} and {@code ./isoline demo}. */
@Command(
        name = "isoline",
        mixinStandardHelpOptions = true,
        subcommands = {CheckCommand.class, DemoCommand.class},
        description = "Judges HL7 v2, FHIR and DICOM with reference implementations.")
public final class ConformanceCli {

    /** The environment is at fault. */
    static final int ENVIRONMENT = 3;

    private ConformanceCli() {}

    public static void main(String[] args) {
        System.exit(run(args));
    }

    /** 0 fine, 1 the input is at fault, 2 the command line, 3 the environment. */
    static int run(String... args) {
        return new CommandLine(new ConformanceCli())
                .setExecutionExceptionHandler(ConformanceCli::failed)
                .execute(args);
    }

    private static int failed(Exception e, CommandLine command, CommandLine.ParseResult result) {
        command.getErr().println("isoline: " + e.getMessage());
        return ENVIRONMENT;
    }
}

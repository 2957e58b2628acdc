package dev.isoline.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The gateway's commands. */
@Command(
        name = "isoline",
        subcommands = {ServeCommand.class, AnalyseCommand.class, ConvertCommand.class},
        mixinStandardHelpOptions = true,
        description = "Interoperability gateway for ambulatory ECG monitoring.")
public final class Isoline {

    private Isoline() {}

    public static void main(String[] arguments) {
        int exit = new CommandLine(new Isoline()).execute(arguments);
        if (exit != ServeCommand.SERVING) {
            System.exit(exit);
        }
    }
}

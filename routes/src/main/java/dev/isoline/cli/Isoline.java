package dev.isoline.cli;

import java.util.Arrays;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The gateway's commands. */
@Command(
        name = "isoline",
        subcommands = {ServeCommand.class, AnalyseCommand.class},
        mixinStandardHelpOptions = true,
        description = "Interoperability gateway for ambulatory ECG monitoring.")
public final class Isoline {

    private Isoline() {}

    public static void main(String[] arguments) {
        int exit = execute(arguments);
        if (exit != ServeCommand.SERVING) {
            System.exit(exit);
        }
    }

    private static int execute(String... arguments) {
        if (arguments.length > 0 && arguments[0].equals("convert")) {
            String[] rest = Arrays.copyOfRange(arguments, 1, arguments.length);
            return new ConvertCommand(System.out, System.err).execute(rest);
        }
        return new CommandLine(new Isoline()).execute(arguments);
    }
}

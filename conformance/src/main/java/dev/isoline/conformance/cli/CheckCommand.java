package dev.isoline.conformance.cli;

import dev.isoline.conformance.validator.Judges;
import dev.isoline.conformance.validator.Verdict;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code ./isoline check FILE...}: exit 1 when a reference implementation objects. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = {
            "Validates HL7 v2, FHIR (JSON) and DICOM files against the published rules.",
            "What a file is, is told by its content. A check whose tool is not installed is",
            "reported as not checked; with ISOLINE_CHECKERS=required it is an error."
        })
final class CheckCommand implements Callable<Integer> {

    @Parameters(paramLabel = "FILE", arity = "1..*", description = "Files to check.")
    private List<Path> files;

    @Option(
            names = "--format",
            defaultValue = "text",
            description = "${COMPLETION-CANDIDATES}; default ${DEFAULT-VALUE}.")
    private VerdictFormat format;

    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        var judges = new Judges();
        var verdicts = new ArrayList<Verdict>();
        for (Path file : files) {
            verdicts.addAll(judges.judge(file.toString(), readable(file)));
        }
        PrintWriter out = spec.commandLine().getOut();
        format.write(verdicts, out);
        out.flush();
        return verdicts.stream().anyMatch(Verdict::failed) ? 1 : 0;
    }

    private Path readable(Path file) {
        if (!Files.isRegularFile(file) || !Files.isReadable(file)) {
            throw new ParameterException(
                    spec.commandLine(), "isoline: cannot read the file " + file);
        }
        return file;
    }
}

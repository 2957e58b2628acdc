package dev.isoline.cli;

import static java.nio.file.StandardOpenOption.CREATE;
import static java.nio.file.StandardOpenOption.TRUNCATE_EXISTING;
import static java.nio.file.StandardOpenOption.WRITE;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Damage;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.analysis.Analysis;
import dev.isoline.ecg.analysis.Detection;
import dev.isoline.ecg.format.RecordingFormats;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Threshold;
import dev.isoline.ecg.wfdb.WfdbAnnotationWriter;
import dev.isoline.recordings.RecordingPlace;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code analyse}: what the program finds in a recording, for a person or as JSON. */
@Command(
        name = "analyse",
        mixinStandardHelpOptions = true,
        description =
                "Summarises a recording: rates, beats, rhythm, heart rate variability, quality.")
public final class AnalyseCommand implements Callable<Integer> {

    private static final int FINE = 0;
    private static final int INPUT_AT_FAULT = 1;
    private static final int COMMAND_LINE_AT_FAULT = 2;
    private static final int ENVIRONMENT_AT_FAULT = 3;

    @Spec private CommandSpec spec;

    @Parameters(
            paramLabel = "RECORDING",
            description = "A recording (docs/formats.md): file, WFDB header, folder or archive.")
    private Path recording;

    @Option(
            names = "--beats",
            paramLabel = "FILE",
            description = "Writes the beats the program found, one line each: seconds,class.")
    private Path beats;

    @Option(
            names = "--annotations",
            paramLabel = "FILE",
            description = "Writes the beats the program found as a MIT annotation file.")
    private Path annotations;

    @Option(
            names = "--salvage",
            description = "Reads what is readable of a short or damaged recording and says so.")
    private boolean salvage;

    @Option(names = "--json", description = "Prints JSON (docs/analyse-json.md).")
    private boolean json;

    @Option(
            names = "--pause",
            paramLabel = "SECONDS",
            defaultValue = "2.0",
            description = "Shortest interval reported as a pause (default ${DEFAULT-VALUE}).")
    private double pause;

    @Option(
            names = "--set",
            paramLabel = "NAME=VALUE",
            description = "Another value for a threshold of docs/analysis.md; can be repeated.")
    private Map<String, Double> thresholds = Map.of();

    @Option(
            names = "--progress",
            description = "Tells each second how far it has read, also where no terminal is.")
    private boolean progress;

    @Override
    public Integer call() {
        if (!(pause > 0 && pause < 3600)) {
            return fail(
                    COMMAND_LINE_AT_FAULT, "--pause takes seconds, more than 0 and under 3600.");
        }
        AnalysisSettings settings;
        try {
            settings = AnalysisSettings.of(thresholds).with(Threshold.PAUSE, pause);
        } catch (IllegalArgumentException e) {
            return fail(COMMAND_LINE_AT_FAULT, e.getMessage());
        }
        try {
            analyse(settings);
            return FINE;
        } catch (RecordingException e) {
            return fail(INPUT_AT_FAULT, e.getMessage());
        } catch (NoSuchFileException e) {
            return fail(COMMAND_LINE_AT_FAULT, "There is nothing at " + e.getMessage() + ".");
        } catch (IOException e) {
            return fail(ENVIRONMENT_AT_FAULT, "Reading or writing failed: " + e.getMessage() + ".");
        }
    }

    private void analyse(AnalysisSettings settings) throws IOException {
        try (var opened =
                watched(RecordingFormats.open(RecordingPlace.files(recording), damage()))) {
            var detection = Detection.in(opened);
            var summary = Analysis.summarise(opened, detection, settings);
            if (beats != null) {
                write(detection.beats(), summary.coverage().hz());
            }
            if (annotations != null) {
                annotate(detection.beats(), summary.coverage().hz());
            }
            print(summary);
        }
    }

    private Recording watched(Recording opened) {
        return Progress.wanted(progress)
                ? new WatchedRecording(opened, Progress.on(spec.commandLine().getErr()))
                : opened;
    }

    private Damage damage() {
        return salvage ? Damage.SALVAGE : Damage.REFUSE;
    }

    private void annotate(List<Beat> found, double hz) throws IOException {
        try (var channel = Files.newByteChannel(annotations, CREATE, WRITE, TRUNCATE_EXISTING)) {
            WfdbAnnotationWriter.write(channel, hz, found, List.of(), List.of());
        }
    }

    private void write(List<Beat> found, double hz) throws IOException {
        try (var out = new PrintWriter(Files.newBufferedWriter(beats))) {
            for (var beat : found) {
                var kind = beat.kind() == Beat.Kind.UNCLASSIFIED ? "" : beat.kind().name();
                out.print(String.format(Locale.ROOT, "%.6f,%s%n", beat.sample() / hz, kind));
            }
            if (out.checkError()) {
                throw new IOException("the beats could not be written");
            }
        }
    }

    private void print(Summary summary) throws IOException {
        var out = spec.commandLine().getOut();
        if (json) {
            SummaryJson.write(summary, out);
        } else {
            out.print(SummaryText.of(summary));
        }
        out.flush();
    }

    private int fail(int exitCode, String sentence) {
        var err = spec.commandLine().getErr();
        err.println(sentence);
        err.flush();
        return exitCode;
    }
}

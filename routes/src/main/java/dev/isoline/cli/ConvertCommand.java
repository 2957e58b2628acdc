package dev.isoline.cli;

import dev.isoline.dicom.DicomException;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import dev.isoline.ecg.RecordingHeader.Identity;
import dev.isoline.ecg.format.RecordingFormats;
import dev.isoline.ecgdicom.OrderContext;
import dev.isoline.ecgdicom.RecordingContext;
import dev.isoline.ecgdicom.WrittenDocument;
import dev.isoline.ecgdicom.WrittenObject;
import dev.isoline.ecgdicom.iod.RecordingToObjects;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import dev.isoline.recordings.ContentDigest;
import dev.isoline.recordings.ObjectFolder;
import dev.isoline.recordings.RecordingPlace;
import java.io.IOException;
import java.io.InterruptedIOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.FutureTask;

/** {@code convert}: a recording to ECG objects, a report in PDF to an Encapsulated PDF object. */
final class ConvertCommand {

    private final PrintStream out;
    private final PrintStream errors;

    ConvertCommand(PrintStream out, PrintStream errors) {
        this.out = out;
        this.errors = errors;
    }

    /**
     * Runs the command.
     *
     * @return the exit code: 0 fine, 1 the input is at fault, 2 the command line, 3 the environment
     */
    int execute(String... words) {
        if (List.of(words).contains("--help") || List.of(words).contains("-h")) {
            out.print(ConvertArguments.USAGE);
            return 0;
        }
        try {
            return execute(ConvertArguments.of(words));
        } catch (ConvertArguments.Fault e) {
            errors.println("isoline: " + e.getMessage());
            errors.print(ConvertArguments.USAGE);
            return 2;
        }
    }

    private int execute(ConvertArguments arguments) {
        try {
            var folder = new ObjectFolder(arguments.out());
            if (ReportPdf.is(arguments.recording())) {
                report(folder, ReportPdf.write(arguments, folder));
                return 0;
            }
            for (WrittenObject object : convert(arguments, folder)) {
                report(folder, object);
            }
            return 0;
        } catch (ContentError e) {
            e.problems().forEach(p -> errors.println("isoline: " + p.location() + ": " + p.text()));
            return 1;
        } catch (RecordingException | DicomException e) {
            errors.println("isoline: " + e.getMessage());
            return 1;
        } catch (NoSuchFileException e) {
            errors.println("isoline: " + e.getFile() + " does not exist; name a file that does.");
            return 2;
        } catch (IOException e) {
            errors.println("isoline: reading or writing failed: " + e.getMessage());
            return 3;
        }
    }

    private List<WrittenObject> convert(ConvertArguments arguments, ObjectFolder folder)
            throws IOException {
        RecordingFiles files = RecordingPlace.files(arguments.recording());
        Future<String> digest = digest(files);
        OrderContext context = OrderFile.read(arguments.order());
        try (Recording opened =
                watched(RecordingFormats.open(files, arguments.damage()), arguments)) {
            compare(opened.header().identity(), context.patient());
            var about = new RecordingContext(result(digest), arguments.zone(), arguments.start());
            var written = RecordingToObjects.write(opened, context, about, folder);
            opened.header().notes().forEach(note -> out.println("Note: " + note));
            return written;
        }
    }

    private Recording watched(Recording opened, ConvertArguments arguments) {
        return Progress.wanted(arguments.progress())
                ? new WatchedRecording(opened, Progress.on(new PrintWriter(errors)))
                : opened;
    }

    /** Runs while order and header are read, for it takes as long as the samples do. */
    private static Future<String> digest(RecordingFiles files) {
        var digest = new FutureTask<>(() -> ContentDigest.of(files));
        var thread = new Thread(digest, "digest");
        thread.setDaemon(true);
        thread.start();
        return digest;
    }

    private static String result(Future<String> digest) throws IOException {
        try {
            return digest.get();
        } catch (ExecutionException e) {
            throw e.getCause() instanceof IOException io ? io : new IOException(e.getCause());
        } catch (InterruptedException e) {
            throw new InterruptedIOException();
        }
    }

    /** What the recording says about the patient is never overruled by the order. */
    private static void compare(Identity identity, OrderContext.Subject patient) {
        same("Patient.identifier", identity.patientId(), patient.id().value());
        same("Patient.birthDate", identity.birthDate().replace("-", ""), patient.birthDate());
        same("Patient.gender", identity.sex(), patient.sex());
    }

    private static void same(String location, String recorded, String ordered) {
        if (!recorded.isEmpty() && !ordered.isEmpty() && !recorded.equals(ordered)) {
            throw new ContentError(
                    Problem.error(
                            Problem.Kind.CONFLICT,
                            location,
                            "The recording names another patient than the order."));
        }
    }

    private void report(ObjectFolder folder, WrittenDocument document) {
        out.println(folder.file(document.sopInstanceUid()) + "  " + document.bytes() + " bytes");
    }

    private void report(ObjectFolder folder, WrittenObject object) {
        Path file = folder.file(object.sopInstanceUid());
        out.println(file + "  " + object.start() + "  " + object.samples() + " samples a channel");
    }
}

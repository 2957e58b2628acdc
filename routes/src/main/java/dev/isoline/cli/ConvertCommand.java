package dev.isoline.cli;

import dev.isoline.dicom.DicomException;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import dev.isoline.ecg.RecordingFormats;
import dev.isoline.ecg.RecordingHeader.Identity;
import dev.isoline.ecgdicom.OrderContext;
import dev.isoline.ecgdicom.RecordingContext;
import dev.isoline.ecgdicom.WrittenObject;
import dev.isoline.ecgdicom.iod.AmbulatoryEcgIod;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import dev.isoline.recordings.ContentDigest;
import dev.isoline.recordings.ObjectFolder;
import dev.isoline.recordings.RecordingPlace;
import java.io.IOException;
import java.io.InterruptedIOException;
import java.io.PrintWriter;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.FutureTask;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code convert}: a recording to Ambulatory ECG objects, one for each gap-free block. */
@Command(
        name = "convert",
        mixinStandardHelpOptions = true,
        description = "Writes a recording as DICOM Ambulatory ECG objects.")
public final class ConvertCommand implements Callable<Integer> {

    @Parameters(paramLabel = "RECORDING", description = "EDF file, WFDB header, folder or .zip.")
    Path recording;

    @Option(
            names = "--order",
            required = true,
            paramLabel = "ORDER.json",
            description = "FHIR R4 Bundle with ServiceRequest, Patient, Practitioner.")
    Path order;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "DIR",
            description = "Folder for the objects, made if absent.")
    Path out;

    @Option(
            names = "--zone",
            paramLabel = "ZONE",
            description = "Time zone of the recorder's clock; this machine's by default.")
    ZoneId zone = ZoneId.systemDefault();

    @Option(
            names = "--start",
            paramLabel = "TIME",
            description = "Local start such as 2026-10-24T09:30:00, for recordings that name none.")
    LocalDateTime start;

    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter errors = spec.commandLine().getErr();
        try {
            var folder = new ObjectFolder(out);
            for (WrittenObject object : convert(folder)) {
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

    private List<WrittenObject> convert(ObjectFolder folder) throws IOException {
        RecordingFiles files = RecordingPlace.files(recording);
        Future<String> digest = digest(files);
        OrderContext context = OrderFile.read(order);
        try (Recording opened = RecordingFormats.open(files)) {
            compare(opened.header().identity(), context.patient());
            var about = new RecordingContext(result(digest), zone, Optional.ofNullable(start));
            return AmbulatoryEcgIod.write(opened, context, about, folder);
        }
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

    private void report(ObjectFolder folder, WrittenObject object) {
        spec.commandLine()
                .getOut()
                .printf(
                        "%s  %s  %d samples a channel%n",
                        folder.file(object.sopInstanceUid()), object.start(), object.samples());
    }
}

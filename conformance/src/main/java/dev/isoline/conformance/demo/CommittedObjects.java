package dev.isoline.conformance.demo;

import dev.isoline.conformance.partner.Archive;
import dev.isoline.conformance.partner.StorageArchive.Report;
import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.TransferSyntax;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collector;
import java.util.stream.Collectors;

/**
 * The archive that is reached by C-STORE has every object the other one has in its folder, each
 * with the same data set, and has committed itself to all of them.
 */
final class CommittedObjects {

    private static final Duration PATIENCE = Duration.ofSeconds(30);

    private final Stage stage;
    private final Story story;

    CommittedObjects(Stage stage, Story story) {
        this.stage = stage;
        this.story = story;
    }

    /**
     * @param offered what the stations were offered, of which the objects have the identifiers
     */
    void compare(List<DataSet> offered) throws IOException, InterruptedException {
        var written = new Archive(stage.folder().path("archive")).objects();
        Set<String> expected = written.stream().map(CommittedObjects::uid).collect(set());
        Optional<Report> last =
                stage.archive()
                        .reports()
                        .await(report -> committed().containsAll(expected), PATIENCE);
        story.expect(
                last.isPresent(),
                "the archive was not asked to commit itself to all %d objects",
                expected.size());
        story.expect(
                stage.archive().reports().all().stream().allMatch(r -> r.answer().isSuccess()),
                "a report of storage commitment was not answered with success");
        int same = 0;
        for (Path object : written) {
            same += same(object) ? 1 : 0;
        }
        story.tell(
                "The archive has taken %d objects by C-STORE, each as written, and has committed"
                        + " itself to %d (storage commitment, reported on an association of its"
                        + " own).",
                same, committed().size());
        for (DataSet item : offered) {
            identified(item, written);
        }
    }

    private Set<String> committed() {
        return stage.archive().reports().all().stream()
                .flatMap(report -> report.result().committed().stream())
                .map(reference -> reference.sopInstance())
                .collect(set());
    }

    private boolean same(Path object) throws IOException {
        Path stored = stage.folder().path("archive-dicom").resolve(object.getFileName());
        boolean same =
                Files.isRegularFile(stored) && Arrays.equals(dataSet(object), dataSet(stored));
        story.expect(same, "the archive does not have %s as it was written", uid(object));
        return same;
    }

    private static byte[] dataSet(Path file) throws IOException {
        var bytes = new ByteArrayOutputStream();
        try (var channel = FileChannel.open(file)) {
            Part10.write(
                    Channels.newChannel(bytes),
                    TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN,
                    Part10.read(channel, ReadLimits.DEFAULT).dataSet());
        }
        return bytes.toByteArray();
    }

    /** Study, accession number and patient are the same from the worklist to the archive. */
    private void identified(DataSet item, List<Path> written) throws IOException {
        int found = 0;
        for (Path object : written) {
            try (var channel = FileChannel.open(object)) {
                DataSet dataSet = Part10.read(channel, ReadLimits.DEFAULT).dataSet();
                if (agree(item, dataSet, Tag.StudyInstanceUID)
                        && agree(item, dataSet, Tag.AccessionNumber)
                        && agree(item, dataSet, Tag.PatientID)) {
                    found++;
                }
            }
        }
        String placer = item.text(Tag.PlacerOrderNumberImagingServiceRequest).orElse("");
        story.expect(
                found > 0,
                "no object has the study, accession number and patient %s was offered with",
                placer);
        story.add("%s: %d objects have the identifiers of the worklist item", placer, found);
    }

    private static boolean agree(DataSet one, DataSet other, int tag) throws IOException {
        return one.text(tag).isPresent() && one.text(tag).equals(other.text(tag));
    }

    private static String uid(Path object) {
        return object.getFileName().toString().replace(".dcm", "");
    }

    private static Collector<String, ?, Set<String>> set() {
        return Collectors.toSet();
    }
}

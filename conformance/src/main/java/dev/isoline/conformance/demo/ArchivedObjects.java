package dev.isoline.conformance.demo;

import dev.isoline.conformance.partner.Archive;
import dev.isoline.conformance.partner.EcgSopClasses;
import dev.isoline.conformance.validator.Waveform;
import dev.isoline.conformance.validator.WaveformReader;
import dev.isoline.synth.EcgPlan;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;

/** The DICOM objects in the archive hold exactly the samples that were synthesised. */
final class ArchivedObjects {

    private static final Duration PATIENCE = Duration.ofSeconds(30);

    /** What does not come for so long is not to be expected. */
    private static final Duration QUIET = Duration.ofSeconds(2);

    private static final String RECORDING = EcgSopClasses.AMBULATORY_ECG;
    private static final String STRIP = EcgSopClasses.GENERAL_ECG;
    private static final double MICROVOLTS = 1000.0 / EcgPlan.UNITS_PER_MILLIVOLT;

    /** Of a calibrated sample: what a decimal string of 16 characters can round (PS3.5 6.2 DS). */
    private static final double ALLOWED_MICROVOLTS = 0.01;

    private final Archive archive;
    private final Story story;
    private final WaveformReader reader = new WaveformReader();

    ArchivedObjects(Stage stage, Story story) {
        this.archive = new Archive(stage.folder().path("archive"));
        this.story = story;
    }

    /** Neither recording has a gap or lasts 24 h: one Ambulatory ECG object each, and strips. */
    void compare(List<DemoRecording> recordings) throws IOException, InterruptedException {
        List<Path> objects = await(recordings.size());
        int strips = archive.objects(STRIP).size();
        story.tell(
                "DICOM waveform objects in the archive: %d recordings, %d strips of them.",
                objects.size(), strips);
        story.expect(
                objects.size() == recordings.size(),
                "%d Ambulatory ECG objects in the archive instead of %d",
                objects.size(),
                recordings.size());
        story.expect(strips > 0, "no strip is in the archive");
        if (!reader.installed()) {
            story.add(
                    "not checked: %s is not installed (%s)",
                    WaveformReader.NAME, WaveformReader.INSTALL);
            return;
        }
        for (DemoRecording recording : recordings) {
            find(recording, objects);
        }
    }

    private List<Path> await(int count) throws IOException, InterruptedException {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (archive.objects(RECORDING).size() < count && System.nanoTime() < end) {
            Thread.sleep(200);
        }
        int before = -1;
        while (archive.objects().size() > before && System.nanoTime() < end) {
            before = archive.objects().size();
            Thread.sleep(QUIET.toMillis());
        }
        return archive.objects(RECORDING);
    }

    private void find(DemoRecording recording, List<Path> objects) throws IOException {
        byte[] expected = Files.readAllBytes(recording.samples());
        for (Path object : objects) {
            Waveform waveform = reader.read(object, MICROVOLTS);
            if (Arrays.equals(waveform.stored(), expected)) {
                found(recording, waveform);
                return;
            }
        }
        story.fail("no DICOM object holds exactly the samples of %s", recording.order());
    }

    private void found(DemoRecording recording, Waveform waveform) {
        new AnnotatedBeats(story).compare(recording, waveform);
        story.add(
                "%s: pydicom reads %d channels x %d samples, all as synthesised",
                recording.order(), waveform.channels(), waveform.samples());
        story.expect(
                waveform.groups() == 1,
                "the DICOM object of %s has %d multiplex groups (PS3.3 A.34.5.4.2: one)",
                recording.order(),
                waveform.groups());
        story.expect(
                waveform.hz() == recording.plan().hz(),
                "the DICOM object of %s has %s Hz",
                recording.order(),
                waveform.hz());
        story.expect(
                waveform.microvoltsOff() <= ALLOWED_MICROVOLTS,
                "the DICOM object of %s is %.3f microvolts off",
                recording.order(),
                waveform.microvoltsOff());
    }
}

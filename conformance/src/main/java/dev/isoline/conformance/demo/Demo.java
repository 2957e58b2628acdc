package dev.isoline.conformance.demo;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import dev.isoline.conformance.validator.FhirJudge;
import dev.isoline.dicom.DataSet;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;

/** The round trip with simulated partners: docs/demo.md. */
public final class Demo {

    private final Path launcher;
    private final PrintWriter out;

    /**
     * @param launcher the {@code isoline} script
     */
    public Demo(Path launcher, PrintWriter out) {
        this.launcher = launcher;
        this.out = out;
    }

    /**
     * @return what did not hold, one sentence each; empty when all of it did
     * @throws DemoFailure when the folder is not ours to use
     */
    public List<String> run(Path root) throws IOException, InterruptedException, DemoFailure {
        var story = new Story(out);
        DemoFolder folder = DemoFolder.prepare(root);
        CompletableFuture<Void> warm = CompletableFuture.runAsync(Demo::warmUp);
        try (var stage = new Stage(folder)) {
            story.tell("The gateway starts; everything is written to %s.", root);
            stage.startGateway(launcher);
            play(stage, story);
        } catch (DemoFailure e) {
            story.fail("%s", e.getMessage());
        }
        warm.join();
        new Judgement(folder, story).judge();
        Artifacts.check(folder, story);
        return story.failures();
    }

    /** The first validation loads what all need and takes seconds; it runs beside the story. */
    private static void warmUp() {
        try {
            FhirJudge.one().judge("warm-up", Templates.text("sable-point-order.json"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void play(Stage stage, Story story)
            throws IOException, InterruptedException, DemoFailure {
        DemoRecording first = DemoRecordings.harrowBay(stage.folder());
        DemoRecording second = DemoRecordings.sablePoint(stage.folder());
        writeTruth(stage.folder(), first, second);
        Credentials credentials = stage.awaitReadiness();
        story.tell("The gateway is ready.");
        try {
            play(stage, story, credentials, first, second);
        } finally {
            new Deliveries(stage, story).write();
        }
    }

    private static void play(
            Stage stage,
            Story story,
            Credentials credentials,
            DemoRecording first,
            DemoRecording second)
            throws IOException, InterruptedException, DemoFailure {
        var worklists = new StationWorklists(stage, story);
        var atHarrowBay = OrderedStep.harrowBay();
        var atSablePoint = OrderedStep.sablePoint();
        var offered = new ArrayList<DataSet>();
        var harrowBay = new HarrowBayOrder(stage, story);
        harrowBay.order();
        worklists.notOffered(atHarrowBay, "HB-1001-on-hold", "on hold");
        harrowBay.insurance();
        worklists.offered(atHarrowBay, "HB-1001-ready").ifPresent(offered::add);
        new SablePointOrder(stage, story, credentials).order();
        worklists.offered(atSablePoint, "SP-2002-ready").ifPresent(offered::add);
        var recorder = new Recorder(stage, story, credentials);
        recorder.upload(first);
        recorder.drop(second);
        var results = new Results(stage, story);
        results.await(stage.harrowBay(), first);
        results.await(stage.sablePoint(), second);
        worklists.notOffered(atHarrowBay, "HB-1001-recorded", "recorded");
        worklists.notOffered(atSablePoint, "SP-2002-recorded", "recorded");
        new ArchivedObjects(stage, story).compare(List.of(first, second));
        new CommittedObjects(stage, story).compare(offered);
        harrowBay.orderAgain();
    }

    private static void writeTruth(DemoFolder folder, DemoRecording first, DemoRecording second)
            throws IOException {
        var truth = Map.of(first.order(), first.truth(), second.order(), second.truth());
        var mapper =
                new ObjectMapper()
                        .enable(SerializationFeature.INDENT_OUTPUT)
                        .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS);
        folder.write("expected.json", mapper.writeValueAsBytes(truth));
    }
}

package dev.isoline.conformance.demo;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.isoline.conformance.partner.RecorderStation;
import dev.isoline.conformance.partner.Reply;
import java.io.IOException;

/** The recorder station hands over the recordings: one over HTTP, one in the watched folder. */
final class Recorder {

    private final Stage stage;
    private final Story story;
    private final RecorderStation station;

    Recorder(Stage stage, Story story, Credentials credentials) throws DemoFailure {
        this.stage = stage;
        this.story = story;
        this.station =
                new RecorderStation(
                        stage.httpBase(), "recorder-station", credentials.of("recorder-station"));
    }

    void upload(DemoRecording recording) throws IOException, InterruptedException, DemoFailure {
        JsonNode first = accepted(station.upload(recording.file()), 202);
        story.tell(
                "The recorder station uploads the EDF+ recording of %s over HTTP: %s.",
                recording.order(), first.path("state").asText());
        JsonNode again = accepted(station.upload(recording.file()), 200);
        story.expect(
                first.path("id").equals(again.path("id")),
                "the same recording sent twice got two ids");
    }

    private static JsonNode accepted(Reply reply, int status) throws IOException, DemoFailure {
        if (reply.status() != status) {
            throw new DemoFailure(
                    "The upload was answered with HTTP "
                            + reply.status()
                            + " instead of "
                            + status
                            + ": "
                            + reply.body());
        }
        JsonNode json = new ObjectMapper().readTree(reply.body());
        if (json.path("state").asText().equals("held")) {
            throw new DemoFailure("The recording is held: " + json.path("problem").asText());
        }
        return json;
    }

    void drop(DemoRecording recording) throws IOException {
        RecorderStation.drop(recording.file(), stage.folder().path("inbox"));
        story.tell(
                "The recorder station drops the WFDB recording of %s into the watched folder.",
                recording.order());
    }
}

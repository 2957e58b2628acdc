package dev.isoline.recordings;

import dev.isoline.ecg.Recording;
import dev.isoline.ecg.format.RecordingFormats;
import java.io.IOException;
import java.nio.file.Path;

/** A recording where {@link RecordingStore} keeps it. */
final class StoredRecording {

    private StoredRecording() {}

    static Recording open(Path file) throws IOException {
        return RecordingFormats.open(RecordingPlace.files(file));
    }
}

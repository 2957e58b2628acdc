package dev.isoline.cli;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Block;
import dev.isoline.ecg.DiaryEntry;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingHeader;
import dev.isoline.ecg.RhythmEpisode;
import dev.isoline.ecg.Stretch;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** A recording that tells how far it has been read. */
final class WatchedRecording implements Recording {

    private final Recording recording;
    private final Progress progress;

    WatchedRecording(Recording recording, Progress progress) {
        this.recording = recording;
        this.progress = progress;
    }

    @Override
    public RecordingHeader header() {
        return recording.header();
    }

    @Override
    public Optional<Block> next() throws IOException {
        var next = recording.next();
        next.ifPresentOrElse(
                block -> progress.read(block.end(), recording.header()), progress::end);
        return next;
    }

    @Override
    public List<Beat> referenceBeats() throws IOException {
        return recording.referenceBeats();
    }

    @Override
    public List<Stretch> flutter() throws IOException {
        return recording.flutter();
    }

    @Override
    public List<RhythmEpisode> rhythms() throws IOException {
        return recording.rhythms();
    }

    @Override
    public List<DiaryEntry> diary() {
        return recording.diary();
    }

    @Override
    public boolean marksMissing() {
        return recording.marksMissing();
    }

    @Override
    public void close() throws IOException {
        progress.end();
        recording.close();
    }
}

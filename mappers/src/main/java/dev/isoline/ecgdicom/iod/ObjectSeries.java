package dev.isoline.ecgdicom.iod;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.Stretch;
import dev.isoline.ecgdicom.WrittenObject;
import java.io.Closeable;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Blocks of samples to objects: a new one after each gap, and after 24 h. */
final class ObjectSeries implements Closeable {

    private static final int SECONDS_OF_AN_OBJECT = 24 * 60 * 60;

    private final SeriesWriter series;
    private final Annotator annotator;
    private final long most;
    private final List<WrittenObject> written = new ArrayList<>();
    private ObjectWriter open;
    private Stretch announced;

    ObjectSeries(SeriesWriter series, Annotator annotator) {
        this.series = series;
        this.annotator = annotator;
        this.most = (long) SECONDS_OF_AN_OBJECT * series.signal().hz();
    }

    void append(Block block) throws IOException {
        if (open != null && block.first() != open.end()) {
            completeOpen();
        }
        for (int from = 0; from < block.length(); ) {
            ObjectWriter object = openAt(block.first() + from);
            int to = (int) Math.min(block.length(), from + most - object.samples());
            object.append(block.samples(), from, to);
            from = to;
            if (object.samples() == most) {
                completeOpen();
            }
        }
    }

    List<WrittenObject> finish() throws IOException {
        if (open != null) {
            completeOpen();
        }
        return written;
    }

    private ObjectWriter openAt(long first) throws IOException {
        if (open == null) {
            announced = annotator.extent(first, most);
            open = series.open(written.size() + 1, first, annotator.of(announced));
        }
        return open;
    }

    /** Annotations were placed by an earlier reading: it has to have read the same. */
    private void completeOpen() throws IOException {
        if (annotator.isKnown() && open.end() != announced.to()) {
            throw new RecordingException("The recording has not the same samples read again.");
        }
        written.add(open.complete());
        close();
    }

    @Override
    public void close() throws IOException {
        if (open != null) {
            open.close();
            open = null;
        }
    }
}

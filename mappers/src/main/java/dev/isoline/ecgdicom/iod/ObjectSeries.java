package dev.isoline.ecgdicom.iod;

import dev.isoline.dicom.AnnouncedBulk;
import dev.isoline.dicom.Uid;
import dev.isoline.ecg.Block;
import dev.isoline.ecgdicom.ObjectSink;
import dev.isoline.ecgdicom.OrderContext;
import dev.isoline.ecgdicom.WrittenObject;
import dev.isoline.ecgdicom.module.WaveformObject;
import java.io.Closeable;
import java.io.IOException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;

/** Blocks of samples to objects: a new one after each gap, and after 24 h. */
final class ObjectSeries implements Closeable {

    private static final int SECONDS_OF_AN_OBJECT = 24 * 60 * 60;

    private final WaveformObject.Series series;
    private final OrderContext order;
    private final ObjectSink sink;
    private final long most;
    private final List<WrittenObject> written = new ArrayList<>();
    private ObjectWriter open;

    ObjectSeries(WaveformObject.Series series, OrderContext order, ObjectSink sink) {
        this.series = series;
        this.order = order;
        this.sink = sink;
        this.most = (long) SECONDS_OF_AN_OBJECT * series.hz();
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
            open = new ObjectWriter(object(first), first, sink);
        }
        return open;
    }

    private void completeOpen() throws IOException {
        written.add(open.complete());
        close();
    }

    /** One object per first sample, so a UID does not depend on what other objects there are. */
    private WaveformObject object(long first) {
        return new WaveformObject(
                order,
                AmbulatoryEcgIod.SOP_CLASS_UID,
                Uid.of("instance", series.uid(), Long.toString(first)),
                series,
                written.size() + 1,
                start(first),
                0,
                new AnnouncedBulk(0));
    }

    private OffsetDateTime start(long first) {
        long nanos = Math.multiplyExact(first % series.hz(), 1_000_000_000L) / series.hz();
        return series.start().plusSeconds(first / series.hz()).plusNanos(nanos).toOffsetDateTime();
    }

    @Override
    public void close() throws IOException {
        if (open != null) {
            open.close();
            open = null;
        }
    }
}

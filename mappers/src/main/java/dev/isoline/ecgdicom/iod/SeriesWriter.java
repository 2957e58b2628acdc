package dev.isoline.ecgdicom.iod;

import dev.isoline.dicom.AnnouncedBulk;
import dev.isoline.dicom.Uid;
import dev.isoline.ecgdicom.ObjectSink;
import dev.isoline.ecgdicom.OrderContext;
import dev.isoline.ecgdicom.annotation.WaveformAnnotation;
import dev.isoline.ecgdicom.module.CompositeObject.Series;
import dev.isoline.ecgdicom.module.WaveformObject;
import dev.isoline.ecgdicom.module.WaveformObject.Signal;
import java.io.IOException;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.util.List;

/**
 * Opens the objects of one series, each by the number of its first sample: a UID does not depend on
 * what other objects there are.
 *
 * @param start of the recording
 */
record SeriesWriter(
        EcgIod iod,
        OrderContext order,
        Series series,
        Signal signal,
        ZonedDateTime start,
        ObjectSink sink) {

    /**
     * @param number Instance Number
     * @param first sample of the recording it begins with
     */
    ObjectWriter open(int number, long first, List<WaveformAnnotation> annotations)
            throws IOException {
        var object =
                new WaveformObject(
                        order,
                        iod.sopClassUid(),
                        Uid.of("instance", series.uid(), Long.toString(first)),
                        series,
                        number,
                        time(first),
                        signal,
                        0,
                        annotations,
                        new AnnouncedBulk(0));
        return new ObjectWriter(iod, object, first, sink);
    }

    private OffsetDateTime time(long first) {
        long nanos = Math.multiplyExact(first % signal.hz(), 1_000_000_000L) / signal.hz();
        return start.plusSeconds(first / signal.hz()).plusNanos(nanos).toOffsetDateTime();
    }
}

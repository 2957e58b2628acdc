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
import java.util.ArrayList;
import java.util.List;

/**
 * Opens the objects of one series. A UID stands for the first sample and what is said of the
 * samples: it does not depend on what other objects there are, and the same samples with other
 * annotations are another object.
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
                        uid(first, annotations),
                        series,
                        number,
                        time(first),
                        signal,
                        0,
                        annotations,
                        new AnnouncedBulk(0));
        return new ObjectWriter(iod, object, first, sink);
    }

    private String uid(long first, List<WaveformAnnotation> annotations) {
        var parts = new ArrayList<>(List.of("instance", series.uid(), Long.toString(first)));
        annotations.forEach(annotation -> parts.add(annotation.toString()));
        return Uid.of(parts.toArray(String[]::new));
    }

    private OffsetDateTime time(long first) {
        long nanos = Math.multiplyExact(first % signal.hz(), 1_000_000_000L) / signal.hz();
        return start.plusSeconds(first / signal.hz()).plusNanos(nanos).toOffsetDateTime();
    }
}

package dev.isoline.ecgdicom.iod;

import dev.isoline.dicom.AnnouncedBulk;
import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.ecgdicom.ObjectSink;
import dev.isoline.ecgdicom.WrittenObject;
import dev.isoline.ecgdicom.module.WaveformObject;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import java.io.Closeable;
import java.io.IOException;
import java.util.List;

/**
 * One object being written: a head that announces no samples, the samples as they are read, and the
 * head once more with the true counts. It takes the same number of bytes then, for counts and
 * lengths have a fixed width. The price is a target that can be positioned; what is saved is a
 * second reading of the recording, or a spool as large as it.
 */
final class ObjectWriter implements Closeable {

    private static final int BYTES_OF_A_SAMPLE = 2;

    private final EcgIod iod;
    private final WaveformObject object;
    private final long first;
    private final ObjectSink.Target target;
    private final SampleEncoder encoder;
    private long samples;

    ObjectWriter(EcgIod iod, WaveformObject object, long first, ObjectSink sink)
            throws IOException {
        this.iod = iod;
        this.object = object;
        this.first = first;
        DataSet head = EcgIod.dataSet(object);
        this.target = sink.open(object.sopInstanceUid());
        this.encoder =
                new SampleEncoder(
                        object.signal().leads().size(), object.signal().padded(), target.channel());
        writeHead(head);
    }

    long samples() {
        return samples;
    }

    /** Position just after the last sample. */
    long end() {
        return first + samples;
    }

    /** Appends samples {@code from} (inclusive) to {@code to} (exclusive) of each lead. */
    void append(int[][] leads, int from, int to) throws IOException {
        encoder.write(leads, from, to);
        samples += to - from;
    }

    WrittenObject complete() throws IOException {
        long bytes = target.channel().position();
        var data = new AnnouncedBulk(samples * object.signal().leads().size() * BYTES_OF_A_SAMPLE);
        DataSet head = EcgIod.dataSet(object.with(samples, data));
        List<Problem> problems = IodLimits.check(iod, head);
        if (!problems.isEmpty()) {
            throw new ContentError(problems);
        }
        target.channel().position(0);
        writeHead(head);
        target.complete();
        return new WrittenObject(
                object.sopClassUid(),
                object.sopInstanceUid(),
                object.series().uid(),
                object.order().studyUid(),
                object.number(),
                object.start(),
                first,
                samples,
                bytes);
    }

    private void writeHead(DataSet head) throws IOException {
        Part10.write(target.channel(), TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN, head);
    }

    @Override
    public void close() throws IOException {
        target.close();
    }
}

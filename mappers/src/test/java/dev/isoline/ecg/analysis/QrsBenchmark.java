package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Damage;
import dev.isoline.ecg.FilesInFolder;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.wfdb.WfdbRecording;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;

/**
 * R peaks of a WFDB record on all leads, and nothing else: what a QRS detector does that gives no
 * classes. Run by docs/benchmarks/analyse. Arguments: the folder, the name of the record.
 */
final class QrsBenchmark {

    private QrsBenchmark() {}

    public static void main(String[] arguments) throws IOException {
        var names = List.of(arguments[1] + ".hea", arguments[1] + ".dat");
        var files = new FilesInFolder(Path.of(arguments[0]), names);
        try (var recording = WfdbRecording.open(files, names.get(0), Damage.REFUSE)) {
            System.out.println(rPeaks(recording) + " R peaks");
        }
    }

    private static long rPeaks(Recording recording) throws IOException {
        var pace = Pace.of(recording.header().hz());
        var leads =
                recording.header().leads().stream().map(l -> new DetectionLead(l, pace)).toList();
        var found = new AtomicLong();
        var search =
                new RPeakSearch(pace, leads, (sample, first, weights) -> found.incrementAndGet());
        for (var next = recording.next(); next.isPresent(); next = recording.next()) {
            search.take(next.get());
        }
        search.finish();
        return found.get();
    }
}

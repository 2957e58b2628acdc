package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.Damage;
import dev.isoline.ecg.FilesInFolder;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.wfdb.WfdbRecording;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/**
 * R peaks of a WFDB record on all leads, and nothing else: what a QRS detector does that gives no
 * classes. Run by docs/benchmarks/analyse. Arguments: the folder, the name of the record.
 */
final class QrsBenchmark {

    private final List<DetectionLead> leads;
    private final RPeaks peaks;
    private final QrsDetector detector;
    private final int piece;
    private long end = -1;
    private long found;

    private QrsBenchmark(Recording recording) {
        var pace = Pace.of(recording.header().hz());
        leads = recording.header().leads().stream().map(l -> new DetectionLead(l, pace)).toList();
        peaks = new RPeaks(leads, pace);
        detector = new QrsDetector(pace, leads, this::complex);
        piece = pace.samples(1);
    }

    public static void main(String[] arguments) throws IOException {
        var names = List.of(arguments[1] + ".hea", arguments[1] + ".dat");
        var files = new FilesInFolder(Path.of(arguments[0]), names);
        try (var recording = WfdbRecording.open(files, names.get(0), Damage.REFUSE)) {
            var benchmark = new QrsBenchmark(recording);
            for (var next = recording.next(); next.isPresent(); next = recording.next()) {
                benchmark.take(next.get());
            }
            System.out.println(benchmark.found + " R peaks");
        }
    }

    private void take(Block block) {
        if (block.first() != end) {
            leads.forEach(lead -> lead.begin(block.first()));
            detector.begin(block.first());
        }
        for (int i = 0; i < leads.size(); i++) {
            leads.get(i).judge(block, i);
        }
        for (int from = 0; from < block.length(); from += piece) {
            int to = Math.min(block.length(), from + piece);
            for (int i = 0; i < leads.size(); i++) {
                leads.get(i).signal().take(block.samples()[i], from, to);
            }
            detector.advance(block.first() + to);
        }
        end = block.end();
    }

    private void complex(long middle) {
        found += peaks.near(middle, detector.weights()) == RPeaks.NONE ? 0 : 1;
    }
}

package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Block;
import java.util.List;

/** Finds the R peaks of a recording on all leads together, block by block. */
final class RPeakSearch {

    /** Takes R peaks in order of time. */
    interface Found {
        /**
         * @param first whether the recording begins, or begins again, before it
         */
        void rPeak(long sample, boolean first, LeadWeights weights);
    }

    private final Pace pace;
    private final List<DetectionLead> leads;
    private final RPeaks peaks;
    private final QrsDetector detector;
    private final Found found;
    private boolean begun;
    private long end = -1;

    RPeakSearch(Pace pace, List<DetectionLead> leads, Found found) {
        this.pace = pace;
        this.leads = leads;
        this.found = found;
        peaks = new RPeaks(leads, pace);
        detector = new QrsDetector(pace, leads, this::complex);
    }

    void take(Block block) {
        if (leads.isEmpty()) {
            return;
        }
        if (block.first() != end) {
            finish();
            leads.forEach(lead -> lead.begin(block.first()));
            detector.begin(block.first());
            begun = true;
        }
        for (int i = 0; i < leads.size(); i++) {
            leads.get(i).judge(block, i);
        }
        int piece = pace.samples(1);
        for (int from = 0; from < block.length(); from += piece) {
            int to = Math.min(block.length(), from + piece);
            for (int i = 0; i < leads.size(); i++) {
                leads.get(i).signal().take(block.samples()[i], from, to);
            }
            detector.advance(block.first() + to);
        }
        end = block.end();
    }

    /** The recording ends, or pauses, after the last block. */
    void finish() {
        if (end >= 0) {
            leads.forEach(lead -> lead.signal().hold(pace.samples(1)));
            detector.finish(end);
        }
    }

    private void complex(long middle) {
        long at = peaks.near(middle, detector.weights());
        if (at != RPeaks.NONE) {
            found.rPeak(at, begun, detector.weights());
            begun = false;
        }
    }
}

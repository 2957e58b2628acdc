package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Block;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.summary.LeadReport;
import java.io.IOException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/** The beats the program finds in a recording, on up to twelve leads together. */
public final class Detection {

    static final double SLOWEST_HZ = 100;
    static final double FASTEST_HZ = 4000;
    private static final int MOST_LEADS = 12;

    private final Pace pace;
    private final Timeline timeline;
    private final List<DetectionLead> leads = new ArrayList<>();
    private final RPeaks peaks;
    private final QrsDetector detector;
    private final BeatClasses classes;
    private final List<Beat> beats;
    private final BitSet unusable = new BitSet();
    private boolean begun;
    private long end = -1;

    private Detection(Recording recording) throws IOException {
        var header = recording.header();
        if (!(header.hz() >= SLOWEST_HZ && header.hz() <= FASTEST_HZ)) {
            throw new RecordingException(
                    "Beats are looked for at 100 to 4000 samples a second, not at the "
                            + header.hz()
                            + " of this recording.");
        }
        pace = Pace.of(header.hz());
        timeline = new Timeline(header.hz());
        for (var lead : header.leads().subList(0, Math.min(MOST_LEADS, header.leads().size()))) {
            leads.add(new DetectionLead(lead, pace));
        }
        peaks = new RPeaks(leads, pace);
        classes = new BeatClasses(pace, leads);
        detector = new QrsDetector(pace, leads, this::complex);
        read(recording);
        beats = classes.finish();
    }

    /** Reads the recording to its end. */
    public static Detection in(Recording recording) throws IOException {
        return new Detection(recording);
    }

    private void read(Recording recording) throws IOException {
        for (var next = recording.next(); next.isPresent(); next = recording.next()) {
            take(next.get());
        }
        finish();
        leads.forEach(DetectionLead::finish);
        for (int second = 0; second < timeline.seconds(); second++) {
            unusable.set(second, !DetectionLead.anyUsable(leads, second));
        }
    }

    private void take(Block block) {
        timeline.add(block);
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

    private void finish() {
        if (end >= 0) {
            leads.forEach(lead -> lead.signal().hold(pace.samples(1)));
            detector.finish(end);
        }
    }

    private void complex(long middle) {
        long at = peaks.near(middle, detector.weights());
        if (at != RPeaks.NONE) {
            classes.add(at, begun, detector.weights());
            begun = false;
        }
    }

    /** In order of time, classified by rhythm and shape. */
    public List<Beat> beats() {
        return beats;
    }

    /** Labels of the leads whose beats were taken. */
    public List<String> leads() {
        return leads.stream()
                .filter(DetectionLead::isUsed)
                .map(DetectionLead::lead)
                .map(Lead::label)
                .toList();
    }

    /** Signal quality of each lead that was looked at. */
    public List<LeadReport> quality() {
        return leads.stream().map(DetectionLead::quality).toList();
    }

    Timeline timeline() {
        return timeline;
    }

    /** Seconds in which no lead can be used. */
    BitSet unusableSeconds() {
        return unusable;
    }
}

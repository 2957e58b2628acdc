package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat;
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

    private final Timeline timeline;
    private final List<DetectionLead> leads = new ArrayList<>();
    private final List<Beat> beats;
    private final BitSet unusable = new BitSet();

    private Detection(Recording recording) throws IOException {
        var header = recording.header();
        if (!(header.hz() >= SLOWEST_HZ && header.hz() <= FASTEST_HZ)) {
            throw new RecordingException(
                    "Beats are looked for at 100 to 4000 samples a second, not at the "
                            + header.hz()
                            + " of this recording.");
        }
        var pace = Pace.of(header.hz());
        timeline = new Timeline(header.hz());
        for (var lead : header.leads().subList(0, Math.min(MOST_LEADS, header.leads().size()))) {
            leads.add(new DetectionLead(lead, pace));
        }
        var classes = new BeatClasses(pace, leads);
        read(recording, new RPeakSearch(pace, leads, classes::add));
        beats = classes.finish();
    }

    /** Reads the recording to its end. */
    public static Detection in(Recording recording) throws IOException {
        return new Detection(recording);
    }

    private void read(Recording recording, RPeakSearch search) throws IOException {
        for (var next = recording.next(); next.isPresent(); next = recording.next()) {
            timeline.add(next.get());
            search.take(next.get());
        }
        search.finish();
        leads.forEach(DetectionLead::finish);
        for (int second = 0; second < timeline.seconds(); second++) {
            unusable.set(second, !DetectionLead.anyUsable(leads, second));
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

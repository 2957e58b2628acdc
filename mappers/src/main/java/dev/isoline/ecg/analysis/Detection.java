package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.BeatSeries;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.summary.LeadReport;
import java.io.IOException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * The beats the program finds in a recording. Each of the first three leads is looked at on its
 * own; in every second the beats of the first lead that is usable then, and in the seconds before
 * and after it, are taken.
 */
public final class Detection {

    static final double SLOWEST_HZ = 100;
    static final double FASTEST_HZ = 4000;
    private static final int MOST_LEADS = 3;

    private final Timeline timeline;
    private final List<DetectionLead> leads = new ArrayList<>();
    private final BeatSeries beats = new BeatSeries();
    private final BitSet unusable = new BitSet();
    private final BitSet used = new BitSet();

    private Detection(Recording recording) throws IOException {
        var header = recording.header();
        if (!(header.hz() >= SLOWEST_HZ && header.hz() <= FASTEST_HZ)) {
            throw new RecordingException(
                    "Beats are looked for at 100 to 4000 samples a second, not at the "
                            + header.hz()
                            + " of this recording.");
        }
        timeline = new Timeline(header.hz());
        for (var lead : header.leads().subList(0, Math.min(MOST_LEADS, header.leads().size()))) {
            leads.add(new DetectionLead(lead, header.hz()));
        }
        read(recording);
        chooseBySecond();
    }

    /** Reads the recording to its end. */
    public static Detection in(Recording recording) throws IOException {
        return new Detection(recording);
    }

    private void read(Recording recording) throws IOException {
        for (var next = recording.next(); next.isPresent(); next = recording.next()) {
            var block = next.get();
            timeline.add(block);
            for (int i = 0; i < leads.size(); i++) {
                leads.get(i).take(block.first(), block.samples()[i]);
            }
        }
        leads.forEach(DetectionLead::finish);
    }

    private void chooseBySecond() {
        for (int second = 0; second < timeline.seconds(); second++) {
            int lead = usable(second);
            if (lead < 0) {
                unusable.set(second);
            } else {
                used.set(lead);
                leads.get(lead).beatsIn(second, beats);
            }
        }
    }

    /** The first lead usable around the second, else in it; -1 when there is none. */
    private int usable(int second) {
        int within = -1;
        for (int i = leads.size() - 1; i >= 0; i--) {
            within = leads.get(i).usable(second, second) ? i : within;
        }
        for (int i = 0; i < leads.size(); i++) {
            if (leads.get(i).usable(Math.max(0, second - 1), second + 1)) {
                return i;
            }
        }
        return within;
    }

    /** Not classified, in order of time. */
    public List<Beat> beats() {
        return beats;
    }

    /** Labels of the leads whose beats were taken. */
    public List<String> leads() {
        return used.stream().mapToObj(i -> leads.get(i).lead()).map(Lead::label).toList();
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

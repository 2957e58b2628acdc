package dev.isoline.ecg.analysis;

import java.util.ArrayList;
import java.util.List;

/** Places beats at their R peaks: on one lead, the clearest, for as long as it can be used. */
final class RPeaks {

    static final long NONE = -1;

    private final List<DetectionLead> leads;
    private final List<RPeak> peaks = new ArrayList<>();
    private int reference;
    private long last = NONE;

    RPeaks(List<DetectionLead> leads, Pace pace) {
        this.leads = leads;
        leads.forEach(lead -> peaks.add(new RPeak(lead.signal(), pace)));
    }

    /** R peak near the middle of a QRS complex; none when it is that of the beat before. */
    long near(long middle, LeadWeights weights) {
        if (weights.weight(reference) == 0) {
            for (int i = 0; i < leads.size(); i++) {
                reference = weights.weight(i) > weights.weight(reference) ? i : reference;
            }
        }
        if (weights.weight(reference) == 0) {
            return NONE;
        }
        leads.get(reference).use();
        long at = peaks.get(reference).near(middle);
        if (at <= last) {
            return NONE;
        }
        last = at;
        return at;
    }
}

package dev.isoline.ecg.wfdb;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.Faults;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.RecordingException;
import java.util.ArrayList;
import java.util.List;

/**
 * The leads of a record of several segments, and where each segment has them: at the same place in
 * a fixed layout; by the description of the signal in a variable one. Where a lead changes its
 * calibration from segment to segment, its samples are converted to the finest of them.
 */
final class WfdbLayout {

    private final boolean variable;
    private final WfdbLeads kept;
    private final List<WfdbSignal> signals;
    private final List<Lead> leads = new ArrayList<>();
    private final Faults faults;

    /**
     * @param header of the layout segment, or of the first segment of a fixed layout
     */
    WfdbLayout(WfdbHeader header, boolean variable, Faults faults) throws RecordingException {
        this.variable = variable;
        this.faults = faults;
        kept = new WfdbLeads(header.signals(), faults);
        signals = kept.signals();
        for (Lead lead : kept.leads()) {
            leads.add(variable ? null : lead);
        }
    }

    int perFrame() {
        return kept.perFrame();
    }

    /** Of all segments that were looked at. */
    List<Lead> leads() {
        var known = new ArrayList<Lead>();
        for (int i = 0; i < leads.size(); i++) {
            known.add(leads.get(i) == null ? kept.leads().get(i) : leads.get(i));
        }
        return known;
    }

    /** Takes the calibrations of one more segment. */
    void lookAt(WfdbHeader segment, String place) throws RecordingException {
        if (!variable && segment.signals().size() != kept.ofAll()) {
            throw new RecordingException(
                    place + "The segment has another number of signals than the first.");
        }
        for (int i = 0; i < leads.size(); i++) {
            var signal = signal(segment, i);
            if (signal != null && !signal.isNull()) {
                leads.set(i, finer(leads.get(i), signal.lead(i + 1)));
            }
        }
    }

    private Lead finer(Lead known, Lead found) {
        if (known == null || sameScale(known, found)) {
            return known == null ? found : known;
        }
        faults.note(
                "Lead "
                        + known.label()
                        + " changes its calibration between segments; its samples were converted"
                        + " to the finest.");
        boolean finer =
                found.calibrated()
                        && (!known.calibrated()
                                || Math.abs(found.sensitivity()) < Math.abs(known.sensitivity()));
        return finer ? found : known;
    }

    private static boolean sameScale(Lead one, Lead other) {
        return one.sensitivity() == other.sensitivity() && one.baseline() == other.baseline();
    }

    /** The signal of the segment that is the lead; null where it has none of its rate. */
    private WfdbSignal signal(WfdbHeader segment, int lead) {
        int index = index(segment, lead);
        return index < 0 ? null : segment.signals().get(index);
    }

    private int index(WfdbHeader segment, int lead) {
        for (int i = 0; i < segment.signals().size(); i++) {
            var signal = segment.signals().get(i);
            boolean same =
                    variable
                            ? signal.description().equals(signals.get(lead).description())
                            : i == kept.index(lead);
            if (same && signal.isVoltage() && signal.perFrame() == perFrame()) {
                return i;
            }
        }
        return -1;
    }

    /**
     * Samples of the leads out of those of all signals of a segment, {@link Block#MISSING} for a
     * lead it has not.
     */
    int[][] of(WfdbHeader segment, List<int[]> all, int count) {
        var samples = new int[leads.size()][];
        for (int i = 0; i < samples.length; i++) {
            int index = index(segment, i);
            samples[i] =
                    index < 0
                            ? WfdbRecord.missing(count)
                            : convert(
                                    all.get(index),
                                    segment.signals().get(index).lead(i + 1),
                                    leads.get(i));
        }
        return samples;
    }

    private static int[] convert(int[] samples, Lead from, Lead to) {
        if (to == null || sameScale(from, to)) {
            return samples;
        }
        if (!from.calibrated()) {
            return WfdbRecord.missing(samples.length);
        }
        for (int i = 0; i < samples.length; i++) {
            if (samples[i] != Block.MISSING) {
                double value = (from.microvolts(samples[i]) - to.baseline()) / to.sensitivity();
                samples[i] = (int) Math.rint(value);
            }
        }
        return samples;
    }
}

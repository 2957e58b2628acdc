package dev.isoline.ecg.wfdb;

import dev.isoline.ecg.Faults;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.RecordingException;
import java.util.ArrayList;
import java.util.List;

/**
 * Which signals of a WFDB record are the leads: the voltages with as many samples a frame as the
 * first of them; the others are left out with a note.
 */
final class WfdbLeads {

    private final List<WfdbSignal> signals;
    private final List<Integer> kept = new ArrayList<>();

    /** Notes what it leaves out. */
    WfdbLeads(List<WfdbSignal> signals, Faults faults) throws RecordingException {
        this.signals = signals;
        for (int i = 0; i < signals.size(); i++) {
            var signal = signals.get(i);
            String name = "Signal " + signal.lead(i + 1).label();
            if (!signal.isVoltage()) {
                faults.note(name + " is not in volts and was left out.");
            } else if (!kept.isEmpty() && signal.perFrame() != perFrame()) {
                faults.note(
                        name
                                + " has another sampling frequency than the first lead and was left out.");
            } else {
                kept.add(i);
            }
        }
        if (kept.isEmpty()) {
            throw new RecordingException("The WFDB record has no ECG signal.");
        }
    }

    int perFrame() {
        return signals.get(kept.get(0)).perFrame();
    }

    /** Signals of the header, those left out included. */
    int ofAll() {
        return signals.size();
    }

    /** Where among the signals of the header the lead stands. */
    int index(int lead) {
        return kept.get(lead);
    }

    /** Those kept, in the order of the header. */
    List<WfdbSignal> signals() {
        return kept.stream().map(signals::get).toList();
    }

    List<Lead> leads() {
        return kept.stream().map(i -> signals.get(i).lead(i + 1)).toList();
    }

    /** Samples of the leads out of those of all signals. */
    int[][] of(List<int[]> all) {
        return kept.stream().map(all::get).toArray(int[][]::new);
    }
}

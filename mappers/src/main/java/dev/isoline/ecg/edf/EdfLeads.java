package dev.isoline.ecg.edf;

import dev.isoline.ecg.Faults;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.RecordingException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * Which signals of an EDF file are the leads: those labelled {@code ECG ...} or with the name of a
 * lead; where no label says so, all voltages. What has another unit or another rate than the first
 * of them is left out with a note.
 */
final class EdfLeads {

    private static final Pattern ECG = Pattern.compile("(?i)(?:ECG|EKG)(?:[ _-]+(.*))?");
    private static final Pattern LEAD_NAME =
            Pattern.compile("(?i)M?(?:I|II|III)|aV[RLF]|M?C?[MV][1-9]R?|CH ?\\d+");

    private final List<EdfSignal> leads;
    private final Faults faults;

    /** Adds to the notes what it leaves out. */
    EdfLeads(EdfHeader edf, Faults faults) throws RecordingException {
        this.faults = faults;
        var ordinary = edf.signals().stream().filter(signal -> !edf.isAnnotations(signal)).toList();
        leads = oneRate(voltages(labelled(ordinary)));
        if (leads.isEmpty()) {
            throw new RecordingException("The EDF file has no ECG signal.");
        }
    }

    List<EdfSignal> signals() {
        return leads;
    }

    List<Lead> leads() {
        return leads.stream().map(signal -> signal.lead(name(signal))).toList();
    }

    private List<EdfSignal> labelled(List<EdfSignal> ordinary) {
        var ecg = ordinary.stream().filter(EdfLeads::isLabelledEcg).toList();
        if (ecg.isEmpty() && !ordinary.isEmpty()) {
            faults.note("No signal is labelled as ECG; every signal in volts was taken as a lead.");
            return ordinary.stream().filter(EdfSignal::isVoltage).toList();
        }
        if (ecg.size() < ordinary.size()) {
            faults.note(ordinary.size() - ecg.size() + " signals are no ECG and were left out.");
        }
        return ecg;
    }

    private List<EdfSignal> voltages(List<EdfSignal> signals) {
        return keep(
                signals,
                signal -> signal.isVoltage() || signal.dimension().isEmpty(),
                " is not in volts and was left out.");
    }

    private List<EdfSignal> oneRate(List<EdfSignal> signals) {
        return keep(
                signals,
                signal -> signal.samples() == signals.get(0).samples(),
                " has another sampling frequency than the first lead and was left out.");
    }

    private List<EdfSignal> keep(
            List<EdfSignal> signals, Predicate<EdfSignal> rule, String otherwise) {
        var kept = new ArrayList<EdfSignal>();
        for (var signal : signals) {
            if (rule.test(signal)) {
                kept.add(signal);
            } else {
                faults.note("Signal " + name(signal) + otherwise);
            }
        }
        return kept;
    }

    private static boolean isLabelledEcg(EdfSignal signal) {
        return ECG.matcher(signal.label()).matches() || LEAD_NAME.matcher(signal.label()).matches();
    }

    private static String name(EdfSignal signal) {
        var ecg = ECG.matcher(signal.label());
        return ecg.matches() && ecg.group(1) != null ? ecg.group(1).strip() : signal.label();
    }
}

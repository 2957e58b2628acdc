package dev.isoline.ecg;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/**
 * What a recording says about itself before its samples.
 *
 * @param format name of the format, such as {@code EDF+C} or {@code WFDB 212}
 * @param identity whom the file says it belongs to
 * @param start local time at the patient, as the file gives it; it carries no zone
 * @param hz sampling frequency of all leads
 * @param leads in the order of {@link Block#samples}
 * @param samples per lead, gaps included; negative when only reading to the end tells
 * @param equipment the recorder as the file names it, empty when it does not
 * @param notes what was left out or repaired while reading, one sentence each
 */
public record RecordingHeader(
        String format,
        Identity identity,
        Optional<LocalDateTime> start,
        double hz,
        List<Lead> leads,
        long samples,
        String equipment,
        List<String> notes) {

    /** The same with other notes. */
    public RecordingHeader noting(List<String> others) {
        return new RecordingHeader(format, identity, start, hz, leads, samples, equipment, others);
    }

    /**
     * Who and which order the file names; each value is empty where the file is silent.
     *
     * @param patientId identifier without its authority
     * @param family family name
     * @param given given names
     * @param birthDate ISO 8601 date
     * @param sex {@code M}, {@code F} or empty
     * @param orderNumber placer, filler or accession number
     */
    public record Identity(
            String patientId,
            String family,
            String given,
            String birthDate,
            String sex,
            String orderNumber) {

        public static final Identity NONE = new Identity("", "", "", "", "", "");
    }
}

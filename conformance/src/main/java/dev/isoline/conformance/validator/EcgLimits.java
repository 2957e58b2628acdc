package dev.isoline.conformance.validator;

import java.util.Arrays;
import java.util.Optional;
import java.util.Set;

/** Numbers of the ECG IODs, PS3.3 A.34.3.4 (12-lead), A.34.4.4 (General), A.34.5.4 (Ambulatory). */
enum EcgLimits {
    // spotless:off
    //          SOP class                        groups channels total  Hz         samples         interpretation
    TWELVE_LEAD("1.2.840.10008.5.1.4.1.1.9.1.1", 5,     13,      13,   200, 1000, 16_384,         "SS"),
    GENERAL    ("1.2.840.10008.5.1.4.1.1.9.1.2", 4,     24,      96,   200, 1000, Long.MAX_VALUE, "SS"),
    AMBULATORY ("1.2.840.10008.5.1.4.1.1.9.1.3", 1,     12,      12,    50, 1000, Long.MAX_VALUE, "SS", "SB");
    // spotless:on

    final String sopClassUid;
    final int groups;
    final int channels;
    final int total;
    final int lowestHz;
    final int highestHz;
    final long samples;
    final Set<String> interpretations;

    EcgLimits(
            String sopClassUid,
            int groups,
            int channels,
            int total,
            int lowestHz,
            int highestHz,
            long samples,
            String... interpretations) {
        this.sopClassUid = sopClassUid;
        this.groups = groups;
        this.channels = channels;
        this.total = total;
        this.lowestHz = lowestHz;
        this.highestHz = highestHz;
        this.samples = samples;
        this.interpretations = Set.of(interpretations);
    }

    static Optional<EcgLimits> of(String sopClassUid) {
        return Arrays.stream(values()).filter(l -> l.sopClassUid.equals(sopClassUid)).findFirst();
    }
}

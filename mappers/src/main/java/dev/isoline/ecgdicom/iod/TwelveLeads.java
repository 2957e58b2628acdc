package dev.isoline.ecgdicom.iod;

import dev.isoline.ecg.Lead;
import dev.isoline.ecgdicom.EcgLeadCode;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** The twelve standard leads of a recording, in their customary order. */
final class TwelveLeads {

    private static final List<String> NAMES =
            List.of("I", "II", "III", "aVR", "aVL", "aVF", "V1", "V2", "V3", "V4", "V5", "V6");

    private TwelveLeads() {}

    /** Their numbers among the leads, from 0; empty when one of them is missing. */
    static Optional<int[]> in(List<Lead> leads) {
        int[] numbers = NAMES.stream().mapToInt(name -> number(name, leads)).toArray();
        return IntStream.of(numbers).allMatch(number -> number >= 0)
                ? Optional.of(numbers)
                : Optional.empty();
    }

    private static int number(String name, List<Lead> leads) {
        var code = EcgLeadCode.of(name);
        return IntStream.range(0, leads.size())
                .filter(i -> EcgLeadCode.of(leads.get(i).label()).equals(code))
                .findFirst()
                .orElse(-1);
    }
}

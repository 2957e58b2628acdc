package dev.isoline.ecg.ishne;

import dev.isoline.ecg.Lead;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Lead specification codes of ISHNE Holter 1.0, table of lead specifications. */
final class IshneLeads {

    // spotless:off
    private static final Map<Integer, String> NAMES = Map.ofEntries(
            Map.entry( 2, "X"),   Map.entry( 3, "Y"),   Map.entry( 4, "Z"),
            Map.entry( 5, "I"),   Map.entry( 6, "II"),  Map.entry( 7, "III"),
            Map.entry( 8, "aVR"), Map.entry( 9, "aVL"), Map.entry(10, "aVF"),
            Map.entry(11, "V1"),  Map.entry(12, "V2"),  Map.entry(13, "V3"),
            Map.entry(14, "V4"),  Map.entry(15, "V5"),  Map.entry(16, "V6"),
            Map.entry(17, "ES"),  Map.entry(18, "AS"),  Map.entry(19, "AI"));
    // spotless:on

    private static final int BITS = 16;
    private static final double NANOVOLTS = 1000;

    private IshneLeads() {}

    /** Those without a name of their own, unknown (0) and bipolar (1), are numbered. */
    static List<Lead> of(IshneHeader header) {
        var leads = new ArrayList<Lead>();
        for (var lead : header.leads()) {
            String name = NAMES.getOrDefault(lead.specification(), "CH" + (leads.size() + 1));
            double microvolts = Math.max(0, lead.resolution()) / NANOVOLTS;
            leads.add(new Lead(name, microvolts, 0, BITS));
        }
        return List.copyOf(leads);
    }
}

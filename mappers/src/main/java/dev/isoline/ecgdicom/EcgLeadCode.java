package dev.isoline.ecgdicom;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * Lead names of recordings as codes of CID 3001 ECG Lead (PS3.16), scheme MDC. Meanings as of 2022;
 * a name of no lead becomes 2:0, its text stays in Channel Label (003A,0203).
 *
 * @param value code value
 * @param meaning code meaning
 */
public record EcgLeadCode(String value, String meaning) {

    public static final EcgLeadCode UNSPECIFIED = new EcgLeadCode("2:0", "Unspecified lead");

    // spotless:off
    private static final String TABLE = """
            I      2:1   Lead I
            II     2:2   Lead II
            III    2:61  Lead III
            AVR    2:62  aVR, augmented voltage, right
            AVL    2:63  aVL, augmented voltage, left
            AVF    2:64  aVF, augmented voltage, foot
            -AVR   2:65  -aVR
            V1     2:3   Lead V1
            V2     2:4   Lead V2
            V3     2:5   Lead V3
            V4     2:6   Lead V4
            V5     2:7   Lead V5
            V6     2:8   Lead V6
            V7     2:9   Lead V7
            V8     2:66  Lead V8
            V9     2:67  Lead V9
            V2R    2:10  Lead V2R
            V3R    2:11  Lead V3R
            V4R    2:12  Lead V4R
            V5R    2:13  Lead V5R
            V6R    2:14  Lead V6R
            V7R    2:15  Lead V7R
            X      2:16  Lead X
            Y      2:17  Lead Y
            Z      2:18  Lead Z
            CC     2:98  Chest lead (symmetric placement)
            CC5    2:19  Chest lead per V5 and V5R placement
            CM     2:105 Chest-manubrium lead
            CM1    2:106 Chest-manubrium lead per V1 placement
            CM2    2:107 Chest-manubrium lead per V2 placement
            CM3    2:108 Chest-manubrium lead per V3 placement
            CM4    2:109 Chest-manubrium lead per V4 placement
            CM5    2:20  Chest-manubrium lead per V5 placement
            CM6    2:110 Chest-manubrium lead per V6 placement
            CM7    2:121 Chest-manubrium lead per V7 placement
            CH5    2:122 Lead CH5
            CR5    2:125 Lead CR5
            MCL    2:91  Modified chest lead (left arm indifferent)
            MCL1   2:92  Modified chest lead per V1 placement
            MCL2   2:93  Modified chest lead per V2 placement
            MCL3   2:94  Modified chest lead per V3 placement
            MCL4   2:95  Modified chest lead per V4 placement
            MCL5   2:96  Modified chest lead per V5 placement
            MCL6   2:97  Modified chest lead per V6 placement
            ML     2:126 Modified limb lead
            MLI    2:126 Modified limb lead
            MLII   2:126 Modified limb lead
            MLIII  2:126 Modified limb lead
            ES     2:131 EASI Lead ES
            AS     2:132 EASI Lead AS
            AI     2:133 EASI Lead AI
            """;
    // spotless:on

    private static final Map<String, EcgLeadCode> BY_NAME = read();

    /** The code of a lead name; case, and words such as ECG or lead before it, do not matter. */
    public static EcgLeadCode of(String label) {
        String name =
                label.strip()
                        .toUpperCase(Locale.ROOT)
                        .replaceFirst("^(ECG|EKG|LEAD)[ _:-]*(?=.)", "")
                        .replaceFirst("^LEAD[ _:-]*(?=.)", "");
        return BY_NAME.getOrDefault(name, UNSPECIFIED);
    }

    private static Map<String, EcgLeadCode> read() {
        var leads = new TreeMap<String, EcgLeadCode>();
        for (String line : TABLE.split("\n")) {
            String[] cells = line.split(" +", 3);
            leads.put(cells[0], new EcgLeadCode(cells[1], cells[2]));
        }
        return leads;
    }
}

package dev.isoline.ecgdicom;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** CID 3001 ECG Lead against pydicom's copy of PS3.16. */
class EcgLeadCodeTest {

    private static final List<String> NAMES =
            List.of(
                    "I",
                    "II",
                    "III",
                    "aVR",
                    "aVL",
                    "aVF",
                    "-aVR",
                    "V1",
                    "V2",
                    "V3",
                    "V4",
                    "V5",
                    "V6",
                    "V7",
                    "V8",
                    "V9",
                    "V2R",
                    "V3R",
                    "V4R",
                    "V5R",
                    "V6R",
                    "V7R",
                    "X",
                    "Y",
                    "Z",
                    "CC",
                    "CC5",
                    "CM",
                    "CM1",
                    "CM2",
                    "CM3",
                    "CM4",
                    "CM5",
                    "CM6",
                    "CM7",
                    "CH5",
                    "CR5",
                    "MCL",
                    "MCL1",
                    "MCL2",
                    "MCL3",
                    "MCL4",
                    "MCL5",
                    "MCL6",
                    "MLII",
                    "ES",
                    "AS",
                    "AI",
                    "something else");

    @Test
    void every_code_and_meaning_is_one_of_cid_3001() throws Exception {
        var rows = new StringBuilder();
        for (String name : NAMES) {
            var code = EcgLeadCode.of(name);
            rows.append("('%s', '%s'),".formatted(code.value(), code.meaning()));
        }
        String script =
                """
                from pydicom.sr._concepts_dict import concepts
                cid = {(v, m.replace('\\u2212', '-')) for entry in concepts['MDC'].values()
                       for v, (m, cids) in entry.items() if 3001 in cids}
                print([row for row in [%s] if row not in cid])
                """;
        assertThat(Checkers.python(script.formatted(rows))).isEqualTo("[]");
    }

    @Test
    void each_listed_name_but_the_last_is_known() {
        assertThat(NAMES.subList(0, NAMES.size() - 1))
                .noneMatch(name -> EcgLeadCode.of(name).equals(EcgLeadCode.UNSPECIFIED));
        assertThat(EcgLeadCode.of("CH1")).isEqualTo(EcgLeadCode.UNSPECIFIED);
    }

    @Test
    void words_before_the_name_and_case_do_not_matter() {
        assertThat(EcgLeadCode.of("ECG II").value()).isEqualTo("2:2");
        assertThat(EcgLeadCode.of("EKG lead v5 ").value()).isEqualTo("2:7");
        assertThat(EcgLeadCode.of("Lead AVF").value()).isEqualTo("2:64");
        assertThat(EcgLeadCode.of("ECG").value()).isEqualTo("2:0");
    }
}

package dev.isoline.conformance.validator;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.conformance.IndependentReader;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** PS3.3 A.34.5.4, C.10.9 and C.10.10, by objects that pydicom wrote with one fault each. */
class EcgJudgeTest {

    @TempDir static Path folder;

    @BeforeAll
    static void objects() throws Exception {
        IndependentReader.needs("pydicom, numpy");
        IndependentReader.run("write_ecg_faults.py", folder);
    }

    private static Verdict judged(String name) {
        return new EcgJudge().judge(name, folder.resolve(name + ".dcm")).orElseThrow();
    }

    @Test
    void a_good_object_passes() {
        assertThat(judged("good").findings()).isEmpty();
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    rate-20           | (003A,001A)
                    rate-4000         | (003A,001A)
                    thirteen-channels | (003A,0005)
                    sample-short      | (5400,1010)
                    sample-over       | (5400,1010)
                    modality          | (0008,0060)
                    interpretation    | (5400,1006)
                    two-groups        | (5400,0100)
                    no-sensitivity    | (003A,0210)
                    no-units          | (003A,0210)
                    arbitrary-units   | (003A,0210)
                    no-source         | (003A,0208)
                    no-skew           | (003A,0215)
                    no-definition     | (003A,0200)
                    past-the-end      | (0040,A132)
                    sample-zero       | (0040,A132)
                    group-two         | (0040,A132)
                    channel-three     | (0040,A132)
                    odd-segment       | (0040,A130)
                    text-and-concept  | (0040,A043)
                    """)
    void a_fault_is_named_by_its_tag_and_its_source(String fault, String place) {
        assertThat(judged(fault).failed()).isTrue();
        assertThat(judged(fault).findings())
                .anySatisfy(
                        finding -> {
                            assertThat(finding.place()).isEqualTo(place);
                            assertThat(finding.text()).contains("PS3.3");
                        });
    }

    @Test
    void what_is_no_object_cannot_be_read(@TempDir Path other) throws Exception {
        Path text = Files.writeString(other.resolve("a.dcm"), "no object");
        assertThat(new EcgJudge().judge("a.dcm", text))
                .hasValueSatisfying(verdict -> assertThat(verdict.failed()).isTrue());
    }
}

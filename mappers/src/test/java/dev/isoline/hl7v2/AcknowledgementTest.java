package dev.isoline.hl7v2;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.hl7v2.HL7Exception;
import dev.isoline.order.Problem;
import dev.isoline.order.Problem.Kind;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Answers as HAPI's structures of the sender's version read them: HL7 v2.5.1 ch. 2.9 and 2.15. */
class AcknowledgementTest {

    private static final List<Problem> HELD =
            List.of(
                    Problem.warning(
                            Kind.REQUIRED,
                            "IN1-8",
                            "IN1-8 (group number) is missing; the order is on hold."),
                    Problem.warning(Kind.REQUIRED, "OBR[2]-4.1", "The code is missing."));

    @ParameterizedTest
    @ValueSource(strings = {"2.5", "2.5.1"})
    void from_2_5_each_problem_has_an_err_with_place_code_and_severity(String version)
            throws HL7Exception {
        var ack = StrictHapi.terser(answer(version, HELD));
        assertThat(ack.get("/MSA-1")).isEqualTo("AA");
        assertThat(ack.get("/MSA-2")).isEqualTo("M1");
        assertThat(ack.get("/ERR(0)-2-1") + ack.get("/ERR(0)-2-2") + ack.get("/ERR(0)-2-3"))
                .isEqualTo("IN118");
        assertThat(ack.get("/ERR(0)-3-1") + ack.get("/ERR(0)-3-3") + ack.get("/ERR(0)-4"))
                .isEqualTo("101HL70357W");
        assertThat(ack.get("/ERR(0)-8")).contains("IN1-8");
        assertThat(
                        ack.get("/ERR(1)-2-1")
                                + ack.get("/ERR(1)-2-2")
                                + ack.get("/ERR(1)-2-3")
                                + ack.get("/ERR(1)-2-5"))
                .isEqualTo("OBR241");
    }

    @ParameterizedTest
    @ValueSource(strings = {"2.3", "2.3.1", "2.4"})
    void before_2_5_err_1_repeats_and_msa_3_says_it(String version) throws HL7Exception {
        var ack = StrictHapi.terser(answer(version, HELD));
        assertThat(ack.get("/MSA-3")).contains("IN1-8");
        assertThat(ack.get("/ERR-1(0)-1") + ack.get("/ERR-1(0)-3") + ack.get("/ERR-1(0)-4-1"))
                .isEqualTo("IN18101");
        assertThat(ack.get("/ERR-1(1)-1") + ack.get("/ERR-1(1)-2") + ack.get("/ERR-1(1)-3"))
                .isEqualTo("OBR24");
    }

    @Test
    void the_answer_goes_back_the_way_the_message_came() throws HL7Exception {
        var ack = StrictHapi.terser(answer("2.5.1", List.of()));
        assertThat(ack.get("/MSH-3") + ack.get("/MSH-4") + ack.get("/MSH-5") + ack.get("/MSH-6"))
                .isEqualTo("GWMHBEHRHARROWBAY");
        assertThat(ack.get("/MSH-9-1") + ack.get("/MSH-9-2") + ack.get("/MSH-9-3"))
                .isEqualTo("ACKO01ACK");
        assertThat(ack.get("/MSH-7") + ack.get("/MSH-10") + ack.get("/MSH-11"))
                .isEqualTo("20261125083000+0000G1P");
    }

    @Test
    void text_with_delimiters_is_escaped() throws HL7Exception {
        var ack =
                StrictHapi.terser(
                        answer("2.5.1", List.of(Problem.error(Kind.VALUE, "PID-8", "a|b^c\\d"))));
        assertThat(ack.get("/ERR-8")).isEqualTo("a|b^c\\d");
        assertThat(ack.get("/MSA-1")).isEqualTo("AE");
    }

    @ParameterizedTest
    @EnumSource(Kind.class)
    void every_kind_has_a_row_of_table_0357(Kind kind) throws HL7Exception {
        var ack = StrictHapi.terser(answer("2.5.1", List.of(Problem.error(kind, "", "x"))));
        boolean rejected = kind.name().startsWith("UNSUPPORTED") || kind == Kind.INTERNAL;
        assertThat(ack.get("/MSA-1")).isEqualTo(rejected ? "AR" : "AE");
        assertThat(ack.get("/ERR-3-1")).matches("10[0-3]|20[0-7]");
    }

    /** HL7 v2.5.1 ch. 2.9.2 and 2.9.3; tables 0155 and 0008. */
    @ParameterizedTest(name = "MSH-15 {0}, MSH-16 {1}")
    @CsvSource({
        "'', '', AA, AE, AR", "NE, NE, '', '', ''", "AL, NE, CA, CE, CR", "NE, AL, AA, AE, AR",
        "SU, NE, CA, '', ''", "ER, NE, '', CE, CR", "NE, SU, AA, '', ''", "NE, ER, '', AE, AR",
        "AL, AL, CA AA, CA AE, CR", "AL, '', CA, CE, CR", "'', AL, AA, AE, AR"
    })
    void the_matrix_of_answers(
            String msh15, String msh16, String good, String error, String reject) {
        var mode = AcknowledgementMode.of(header("2.5.1|||" + msh15 + "|" + msh16));
        assertThat(String.join(" ", mode.codes(List.of()))).isEqualTo(good);
        assertThat(String.join(" ", mode.codes(List.of(Problem.error(Kind.REQUIRED, "", "")))))
                .isEqualTo(error);
        assertThat(
                        String.join(
                                " ",
                                mode.codes(
                                        List.of(Problem.error(Kind.UNSUPPORTED_VERSION, "", "")))))
                .isEqualTo(reject);
    }

    private static byte[] answer(String version, List<Problem> problems) {
        return Acknowledgement.answers(header(version), problems, "G1", Answers.AT).get(0).bytes();
    }

    private static MessageHeader header(String fromMsh12) {
        String msh = "MSH|^~\\&|HBEHR|HARROWBAY|GW|M|20261125||ORM^O01|M1|P|" + fromMsh12;
        return MessageHeader.peek(msh.getBytes(StandardCharsets.US_ASCII));
    }
}

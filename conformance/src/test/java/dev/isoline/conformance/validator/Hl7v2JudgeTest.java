package dev.isoline.conformance.validator;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class Hl7v2JudgeTest {

    private static final String MSH =
            "MSH|^~\\&|EHR|CLINIC|GW|MON|20261124230000+0000||ORU^R01^ORU_R01|M1|P|2.5.1\r";

    private final Hl7v2Judge judge = new Hl7v2Judge();

    @Test
    void a_right_message_passes() {
        String text =
                MSH
                        + "PID|1||12345^^^CLINIC^MR||Doe^Jane\r"
                        + "OBR|1|||18754-2^Holter^LN\r"
                        + "OBX|1|NM|41924-2^Heart rate 24 hour mean^LN||71|/min^^UCUM|||||P\r";
        assertThat(judge(text).outcome()).isEqualTo(Verdict.Outcome.PASSED);
    }

    @Test
    void a_required_field_left_out_is_named() {
        // HL7 v2.5.1 ch. 4.5.3: OBR-4 is required
        assertThat(judge(MSH + "OBR|1\r").findings())
                .contains(Finding.error("OBR-4", "required field is empty"));
    }

    @Test
    void a_required_segment_left_out_is_named() {
        // HL7 v2.5.1 ch. 2.13: ACK needs MSA
        String ack = MSH.replace("ORU^R01^ORU_R01", "ACK^R01^ACK");
        assertThat(judge(ack).findings()).extracting(Finding::place).containsExactly("MSA");
    }

    @Test
    void a_number_that_is_none_fails() {
        String text = MSH + "OBR|1|||18754-2^Holter^LN\rOBX|1|NM|1^x^LN||fast||||||P\r";
        assertThat(judge(text).failed()).isTrue();
    }

    @Test
    void text_that_is_no_message_fails() {
        assertThat(judge("hello").failed()).isTrue();
    }

    private Verdict judge(String text) {
        return judge.judge("m.hl7", text.getBytes(StandardCharsets.UTF_8));
    }
}

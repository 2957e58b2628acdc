package dev.isoline.hl7v2;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.model.v251.message.ADT_A05;
import ca.uhn.hl7v2.util.Terser;
import dev.isoline.order.ContentError;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Escapes: HL7 v2.5.1 ch. 2.7. Character sets: table 0211. Delimiters: ch. 2.5.4. */
class Er7ReaderTest {

    private static final String MSH =
            "MSH|^~\\&|HBEHR|HARROWBAY|ISOLINE|M|20261125||ORM^O01^ORM_O01|1|P|2.5.1";

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = ';',
            quoteCharacter = '"',
            value = {
                "a\\F\\b\\S\\c\\R\\d\\T\\e\\E\\f; a|b^c~d&e\\f",
                "lead off 4\\5 times; lead off 4\\5 times",
                "lone \\ then \\F\\ pipe; lone \\ then | pipe",
                "one\\X41\\\\X42\\two; oneABtwo",
                "two bytes\\X0041\\; two bytesA",
                "three digits\\X00A\\kept; three digits\\X00A\\kept",
                "utf-8 \\XC3BC\\; utf-8 ü",
                "latin \\XFC\\; latin ü",
                "a\\.br\\F\\H\\b; a\\.br\\F\\H\\b",
                "local \\Z12\\ and \\C2842\\; local \\Z12\\ and \\C2842\\",
                "ends with \\; ends with \\"
            })
    void an_escape_becomes_what_it_stands_for_and_text_stays(String sent, String read)
            throws HL7Exception {
        assertThat(new Terser(read("NTE|1||" + sent).message()).get("/.ORDER_DETAIL/NTE-3"))
                .isEqualTo(read);
    }

    @Test
    void two_escapes_back_to_back_are_cr_and_lf() throws HL7Exception {
        String note =
                new Terser(read("NTE|1||one\\X0D\\\\X0A\\two").message())
                        .get("/.ORDER_DETAIL/NTE-3");
        assertThat(note).isEqualTo("one\r\ntwo");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "8859/1, ISO-8859-1",
        "8859/15, ISO-8859-15",
        "UNICODE UTF-8, UTF-8",
        "GB 18030-2000, GB18030"
    })
    void a_name_in_its_declared_character_set_is_intact(String code, String charset)
            throws HL7Exception {
        String text = order(MSH + "||||||" + code, "Müller");
        var message =
                Er7Reader.read(text.getBytes(Charset.forName(charset)), SenderDefaults.STANDARD);
        assertThat(new Terser(message.message()).get("/.PID-5-1")).isEqualTo("Müller");
        assertThat(message.warnings()).isEmpty();
    }

    @Test
    void an_undeclared_character_set_is_the_senders_default() throws HL7Exception {
        byte[] latin = order(MSH, "Müller").getBytes(StandardCharsets.ISO_8859_1);
        var message = Er7Reader.read(latin, new SenderDefaults("8859/1", "2.5.1"));
        assertThat(new Terser(message.message()).get("/.PID-5-1")).isEqualTo("Müller");
        assertThatThrownBy(() -> Er7Reader.read(latin, SenderDefaults.STANDARD))
                .isInstanceOf(ContentError.class)
                .hasMessageContaining("MSH-18");
    }

    @Test
    void utf_8_read_as_8859_1_is_flagged() {
        byte[] utf8 = order(MSH, "Müller").getBytes(StandardCharsets.UTF_8);
        assertThat(Er7Reader.read(utf8, new SenderDefaults("8859/1", "2.5.1")).warnings())
                .anyMatch(w -> w.location().equals("MSH-18"));
    }

    @Test
    void without_a_subcomponent_separator_an_ampersand_is_text() throws HL7Exception {
        String text = order(MSH.replace("^~\\&", "^~\\"), "Marsh & Co");
        assertThat(terser(text).get("/.PID-5-1-1")).isEqualTo("Marsh & Co");
    }

    @Test
    void the_truncation_character_is_text() throws HL7Exception {
        String text =
                order(MSH.replace("^~\\&", "^~\\&#").replace("2.5.1", "2.7"), "Apt #5 \\P\\ &");
        assertThat(terser(text).get("/.PID-5-1-1")).isEqualTo("Apt #5 # ");
    }

    @Test
    void any_version_is_read_into_the_2_5_1_model() {
        String text =
                order(MSH, "Marsh").replace("ORM^O01^ORM_O01", "ADT^A28").replace("2.5.1", "2.3");
        var message =
                Er7Reader.read(text.getBytes(StandardCharsets.UTF_8), SenderDefaults.STANDARD);
        assertThat(message.message()).isInstanceOf(ADT_A05.class);
        assertThat(message.header().version()).isEqualTo("2.3");
    }

    @Test
    void many_threads_read_the_same() {
        byte[] raw = order(MSH, "Marsh").getBytes(StandardCharsets.UTF_8);
        Set<String> seen =
                IntStream.range(0, 400)
                        .parallel()
                        .mapToObj(
                                i ->
                                        Er7Reader.read(raw, SenderDefaults.STANDARD)
                                                .message()
                                                .toString())
                        .collect(Collectors.toSet());
        assertThat(seen).hasSize(1);
    }

    private static Terser terser(String text) {
        return new Terser(
                Er7Reader.read(text.getBytes(StandardCharsets.UTF_8), SenderDefaults.STANDARD)
                        .message());
    }

    private static Hl7Message read(String segment) {
        String text = order(MSH, "Marsh") + segment + "\r";
        return Er7Reader.read(text.getBytes(StandardCharsets.UTF_8), SenderDefaults.STANDARD);
    }

    private static String order(String msh, String family) {
        return msh
                + "\rPID|1||1^^^HARROWBAY^MR||"
                + family
                + "^Ines\rORC|NW|H-1\rOBR|1|H-1||18754-2\r";
    }
}

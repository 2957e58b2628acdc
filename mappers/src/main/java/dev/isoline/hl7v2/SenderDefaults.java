package dev.isoline.hl7v2;

import java.nio.charset.Charset;

/**
 * What holds for a sender where its messages say nothing.
 *
 * @param charset name of the character set when MSH-18 is empty: of HL7 table 0211 or of Java
 * @param version HL7 version when MSH-12 is empty
 */
public record SenderDefaults(String charset, String version) {

    public static final SenderDefaults STANDARD = new SenderDefaults("UTF-8", "2.5.1");

    Charset encoding() {
        return Table0211.charset(charset).orElseGet(() -> Charset.forName(charset));
    }
}

package dev.isoline.hl7v2;

import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import dev.isoline.order.Problem.Kind;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/** Bytes to text by MSH-18 (HL7 v2.5.1 ch. 2.15.9.18): refused rather than garbled. */
final class Er7Decoder {

    private static final String MSH_18 = "MSH-18";

    private final SenderDefaults defaults;

    Er7Decoder(SenderDefaults defaults) {
        this.defaults = defaults;
    }

    String decode(byte[] raw, MessageHeader header, List<Problem> warnings) {
        Charset charset = charset(header);
        int start = HeaderLine.start(raw);
        String text =
                tryDecode(raw, start, raw.length, charset)
                        .filter(decoded -> !holdsControls(decoded, charset))
                        .orElseThrow(() -> invalid(header, charset));
        if (isSuspicious(raw, text, charset)) {
            warnings.add(
                    Problem.warning(
                            Kind.VALUE,
                            MSH_18,
                            "The text was read as "
                                    + charset.name()
                                    + " but looks like UTF-8; check MSH-18."));
        }
        return text;
    }

    private Charset charset(MessageHeader header) {
        String code = header.characterSet();
        if (code.isEmpty()) {
            return defaults.encoding();
        }
        return Table0211.charset(code)
                .orElseThrow(
                        () ->
                                new ContentError(
                                        Problem.error(
                                                Kind.UNSUPPORTED_CHARSET,
                                                MSH_18,
                                                "MSH-18 names a character set that is not read here;"
                                                        + " use UNICODE UTF-8, 8859/1 or ASCII.")));
    }

    private static ContentError invalid(MessageHeader header, Charset charset) {
        String source =
                header.characterSet().isEmpty()
                        ? "MSH-18 is empty and the message is not valid "
                        : "MSH-18 does not fit the message, which is not valid ";
        return new ContentError(
                Problem.error(
                        Kind.DATA_TYPE, MSH_18, source + charset.name() + "; nothing was taken."));
    }

    /** ISO 8859 leaves 80 to 9F to control characters, which no HL7 v2 text holds. */
    private static boolean holdsControls(String text, Charset charset) {
        return charset.name().startsWith("ISO-8859")
                && text.chars().anyMatch(c -> c >= 0x80 && c <= 0x9F);
    }

    private static boolean isSuspicious(byte[] raw, String text, Charset charset) {
        return charset.name().startsWith("ISO-8859")
                && text.chars().anyMatch(c -> c > 0x7F)
                && decodes(raw, 0, raw.length, StandardCharsets.UTF_8);
    }

    static boolean decodes(byte[] raw, int start, int end, Charset charset) {
        return tryDecode(raw, start, end, charset).isPresent();
    }

    private static Optional<String> tryDecode(byte[] raw, int start, int end, Charset charset) {
        var decoder =
                charset.newDecoder()
                        .onMalformedInput(CodingErrorAction.REPORT)
                        .onUnmappableCharacter(CodingErrorAction.REPORT);
        try {
            return Optional.of(decoder.decode(ByteBuffer.wrap(raw, start, end - start)).toString());
        } catch (CharacterCodingException e) {
            return Optional.empty();
        }
    }
}

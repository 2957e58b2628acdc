package dev.isoline.hl7v2;

import dev.isoline.order.Problem;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;

/**
 * The messages of one frame, HL7 v2.5.1 ch. 2.10.3. Each MSH begins a message of its own; FHS, BHS,
 * BTS and FTS belong to none. What stands before the first MSH is a message too, one that cannot be
 * read, so that it is answered and not lost.
 *
 * <p>The answer has the shape of the frame: BHS, the acknowledgements and BTS when it came with BHS
 * or FHS, else the acknowledgements one after the other.
 *
 * @param header BHS, unreadable when there is none
 * @param enveloped whether there was a BHS or FHS
 * @param messages as they came; none in an empty batch
 * @param warnings a BTS-1 that does not count right
 */
public record Batch(
        MessageHeader header, boolean enveloped, List<byte[]> messages, List<Problem> warnings) {

    public static Batch of(byte[] frame) {
        return new BatchLines(frame).batch();
    }

    /**
     * @param answers the acknowledgements of {@code messages}, in their order
     * @param controlId BHS-11
     * @return empty when there is nothing to answer
     */
    public byte[] answer(List<byte[]> answers, String controlId, Instant at) {
        var bytes = new ByteArrayOutputStream();
        if (enveloped) {
            bytes.writeBytes(line(AcknowledgementSegments.bhs(header, controlId, at)));
        }
        answers.forEach(bytes::writeBytes);
        if (enveloped) {
            bytes.writeBytes(line(AcknowledgementSegments.bts(header, messages.size(), warnings)));
        }
        return bytes.toByteArray();
    }

    private byte[] line(String segment) {
        return (segment + "\r")
                .getBytes(header.isReadable() ? header.encoding() : StandardCharsets.UTF_8);
    }
}

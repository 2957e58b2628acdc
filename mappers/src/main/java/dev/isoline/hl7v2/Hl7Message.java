package dev.isoline.hl7v2;

import ca.uhn.hl7v2.model.Message;
import dev.isoline.order.Problem;
import java.util.List;

/**
 * A message that can be worked with.
 *
 * @param header MSH as it came
 * @param message in the v2.5.1 model whatever MSH-12 says
 * @param warnings what was put right or overlooked while reading
 */
public record Hl7Message(MessageHeader header, Message message, List<Problem> warnings) {}

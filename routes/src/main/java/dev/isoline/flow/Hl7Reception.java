package dev.isoline.flow;

import dev.isoline.hl7v2.Batch;
import dev.isoline.hl7v2.Er7Reader;
import dev.isoline.hl7v2.SenderDefaults;
import dev.isoline.hl7v2fhir.MappingContext;
import dev.isoline.hl7v2fhir.MessageToFhir;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import dev.isoline.order.Problem.Kind;
import dev.isoline.settings.Senders;
import java.time.Clock;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/** Takes in HL7 v2 messages: reads and maps each, and answers with what {@link Hl7Desk} says. */
@Component
public class Hl7Reception {

    private static final Logger LOG = LoggerFactory.getLogger(Hl7Reception.class);

    private final Hl7Desk desk;
    private final Senders senders;
    private final Clock clock;

    public Hl7Reception(Hl7Desk desk, Senders senders, Clock clock) {
        this.desk = desk;
        this.senders = senders;
        this.clock = clock;
    }

    /**
     * @param frame one message, or a batch
     * @return one frame per answer: a sender may want none or, in enhanced mode, two; a batch is
     *     answered by a batch
     */
    public List<byte[]> receive(byte[] frame) {
        Instant at = clock.instant();
        var batch = Batch.of(frame);
        List<byte[]> answers =
                batch.messages().stream().map(raw -> answer(Received.of(raw, at))).toList();
        return answers.size() == 1 && !batch.enveloped()
                ? Batch.of(answers.get(0)).messages()
                : List.of(batch.answer(answers, "ISO" + at.toEpochMilli(), at));
    }

    /** Empty when the sender wants no answer; when even a refusal fails, still an answer. */
    private byte[] answer(Received received) {
        try {
            return accept(received);
        } catch (ContentError e) {
            return refuse(received, e.problems());
        } catch (RuntimeException e) {
            log(received, e);
            return refuse(received, List.of(internal()));
        }
    }

    private byte[] accept(Received received) {
        String name = senders.nameOf(received.header());
        var sender = senders.byName(name);
        var defaults = new SenderDefaults(sender.charset(), sender.version());
        var message = Er7Reader.read(received.raw(), defaults);
        var context =
                new MappingContext(
                        name,
                        sender.authority(),
                        sender.authorities(),
                        sender.zone(),
                        received.at());
        var mapped = MessageToFhir.map(message.message(), context);
        return desk.accept(received, name, message.warnings(), mapped);
    }

    private byte[] refuse(Received received, List<Problem> problems) {
        try {
            return desk.refuse(received, problems);
        } catch (RuntimeException e) {
            log(received, e);
            return Hl7Desk.unstored(received, internal());
        }
    }

    private static Problem internal() {
        return Problem.error(
                Kind.INTERNAL, "", "The message could not be processed; please send it again.");
    }

    /** The message of an unforeseen fault may quote a patient, so only its place is logged. */
    private static void log(Received received, RuntimeException fault) {
        LOG.error(
                "Message {} could not be processed: {} at {}",
                received.header().controlId(),
                fault.getClass().getName(),
                Arrays.stream(fault.getStackTrace()).limit(8).toList());
    }
}

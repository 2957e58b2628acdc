package dev.isoline.flow;

import dev.isoline.hl7v2.Acknowledgement;
import dev.isoline.hl7v2.Batch;
import dev.isoline.hl7v2.Er7Reader;
import dev.isoline.hl7v2.Hl7Message;
import dev.isoline.hl7v2.MessageHeader;
import dev.isoline.hl7v2.SenderDefaults;
import dev.isoline.hl7v2fhir.MappedMessage;
import dev.isoline.hl7v2fhir.MappingContext;
import dev.isoline.hl7v2fhir.MessageToFhir;
import dev.isoline.intake.Intake;
import dev.isoline.intake.OrderOutcome;
import dev.isoline.intake.Source;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.MessageTable.NewMessage;
import dev.isoline.ledger.MessageTable.StoredMessage;
import dev.isoline.ledger.Tables;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import dev.isoline.order.Problem.Kind;
import dev.isoline.settings.IsolineProperties.Sender;
import dev.isoline.settings.Senders;
import java.io.ByteArrayOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletionException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/**
 * Takes in one HL7 v2 message: read and mapped on the connection's thread, then stored with all
 * that follows from it in one unit of work, and answered only when that is on disk.
 */
@Component
public class Hl7Reception {

    private static final Logger LOG = LoggerFactory.getLogger(Hl7Reception.class);
    private static final String CHANNEL = "mllp";

    private final Ledger ledger;
    private final Intake intake;
    private final Senders senders;
    private final Clock clock;

    public Hl7Reception(Ledger ledger, Intake intake, Senders senders, Clock clock) {
        this.ledger = ledger;
        this.intake = intake;
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
        List<byte[]> answers = batch.messages().stream().map(raw -> message(raw, at)).toList();
        return answers.size() == 1 && !batch.enveloped()
                ? Batch.of(answers.get(0)).messages()
                : List.of(batch.answer(answers, "ISO" + at.toEpochMilli(), at));
    }

    /** The answer's bytes; none when the sender wants none. */
    private byte[] message(byte[] raw, Instant at) {
        var header = MessageHeader.peek(raw);
        try {
            return accept(raw, header, at);
        } catch (ContentError e) {
            return refuse(raw, header, at, e.problems());
        } catch (RuntimeException e) {
            LOG.error("Message {} could not be processed", header.controlId(), e);
            return refuse(raw, header, at, List.of(internal()));
        }
    }

    private byte[] accept(byte[] raw, MessageHeader header, Instant at) {
        String name = senders.nameOf(header);
        Sender sender = senders.byName(name);
        var message = Er7Reader.read(raw, new SenderDefaults(sender.charset(), sender.version()));
        var mapped =
                MessageToFhir.map(
                        message.message(),
                        new MappingContext(
                                name, sender.authority(), sender.authorities(), sender.zone(), at));
        var row = row(raw, header, at);
        return commit(tables -> store(tables, row, header, name, message, mapped));
    }

    private byte[] store(
            Tables tables,
            NewMessage row,
            MessageHeader header,
            String sender,
            Hl7Message message,
            MappedMessage mapped) {
        Optional<StoredMessage> before =
                tables.messages().accepted(CHANNEL, row.sender(), row.controlId());
        if (before.isPresent()) {
            return again(before.get(), row);
        }
        long id = tables.messages().insert(row);
        var source = new Source(CHANNEL, sender, id, row.receivedAt());
        var problems = new ArrayList<>(message.warnings());
        mapped.notes().forEach(n -> problems.add(Problem.warning(Kind.VALUE, n.field(), n.text())));
        intake.message(tables, source, mapped).stream()
                .map(OrderOutcome::problems)
                .forEach(problems::addAll);
        return answer(tables, id, header, problems, row.receivedAt());
    }

    /** The same message gets the same answer; another one under its control id is refused. */
    private static byte[] again(StoredMessage before, NewMessage now) {
        if (!before.message().sha256().equals(now.sha256())) {
            throw new ContentError(
                    Problem.error(
                            Kind.DUPLICATE_KEY,
                            "MSH-10",
                            "Another message with this control id was accepted before."));
        }
        return before.answer();
    }

    /** What is refused is kept as well; when even that fails the sender is still answered. */
    private byte[] refuse(byte[] raw, MessageHeader header, Instant at, List<Problem> problems) {
        try {
            return commit(
                    tables -> {
                        long id = tables.messages().insert(row(raw, header, at));
                        return answer(tables, id, header, problems, at);
                    });
        } catch (RuntimeException e) {
            LOG.error("Message {} could not be stored", header.controlId(), e);
            return bytes(Acknowledgement.answers(header, List.of(internal()), "0", at));
        }
    }

    private static byte[] answer(
            Tables tables, long id, MessageHeader header, List<Problem> problems, Instant at) {
        var answers = Acknowledgement.answers(header, problems, "ISO" + id, at);
        byte[] bytes = bytes(answers);
        String outcome =
                answers.isEmpty()
                        ? (problems.stream().anyMatch(Problem::isError) ? "AE" : "AA")
                        : answers.get(0).code();
        tables.messages().answered(id, bytes, outcome);
        LOG.info("Message {} answered {}", id, outcome);
        return bytes;
    }

    private static byte[] bytes(List<Acknowledgement> answers) {
        var bytes = new ByteArrayOutputStream();
        answers.forEach(answer -> bytes.writeBytes(answer.bytes()));
        return bytes.toByteArray();
    }

    private <T> T commit(java.util.function.Function<Tables, T> work) {
        try {
            return ledger.write(work).join();
        } catch (CompletionException e) {
            throw e.getCause() instanceof RuntimeException cause ? cause : e;
        }
    }

    private static NewMessage row(byte[] raw, MessageHeader header, Instant at) {
        return new NewMessage(
                CHANNEL,
                header.sendingApplication() + "|" + header.sendingFacility(),
                header.controlId(),
                header.messageCode() + "^" + header.triggerEvent(),
                sha256(raw),
                raw,
                at);
    }

    private static Problem internal() {
        return Problem.error(
                Kind.INTERNAL, "", "The message could not be processed; please send it again.");
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}

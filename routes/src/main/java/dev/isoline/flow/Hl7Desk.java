package dev.isoline.flow;

import dev.isoline.hl7v2.Acknowledgement;
import dev.isoline.hl7v2fhir.MappedMessage;
import dev.isoline.intake.Intake;
import dev.isoline.intake.Source;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.MessageTable.NewMessage;
import dev.isoline.ledger.MessageTable.StoredMessage;
import dev.isoline.ledger.Tables;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import dev.isoline.order.Problem.Kind;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletionException;
import java.util.function.Function;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/**
 * Stores an HL7 v2 message, all that follows from it and its answer in one unit of work; the answer
 * is handed out when that is on disk.
 */
@Component
public class Hl7Desk {

    private static final Logger LOG = LoggerFactory.getLogger(Hl7Desk.class);

    private final Ledger ledger;
    private final Intake intake;

    public Hl7Desk(Ledger ledger, Intake intake) {
        this.ledger = ledger;
        this.intake = intake;
    }

    /**
     * @param sender name of the configured sender
     * @param warnings of the reading
     * @throws ContentError when it is refused; nothing of it is stored then
     */
    byte[] accept(Received received, String sender, List<Problem> warnings, MappedMessage mapped) {
        var row = received.row();
        return commit(
                tables ->
                        tables.messages()
                                .accepted(row.channel(), row.sender(), row.controlId())
                                .map(before -> again(before, row))
                                .orElseGet(
                                        () -> store(tables, received, sender, warnings, mapped)));
    }

    /** What is refused is kept as well. */
    byte[] refuse(Received received, List<Problem> problems) {
        return commit(
                tables -> {
                    long id = tables.messages().insert(received.row());
                    return answer(tables, id, received, problems);
                });
    }

    /** The answer to a message that could not be stored. */
    static byte[] unstored(Received received, Problem problem) {
        return bytes(
                Acknowledgement.answers(received.header(), List.of(problem), "0", received.at()));
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

    private byte[] store(
            Tables tables,
            Received received,
            String sender,
            List<Problem> warnings,
            MappedMessage mapped) {
        long id = tables.messages().insert(received.row());
        var problems = new ArrayList<>(warnings);
        mapped.notes().forEach(n -> problems.add(Problem.warning(Kind.VALUE, n.field(), n.text())));
        var source = new Source(Received.CHANNEL, sender, id, received.at());
        problems.addAll(intake.message(tables, source, mapped));
        return answer(tables, id, received, problems);
    }

    private static byte[] answer(
            Tables tables, long id, Received received, List<Problem> problems) {
        var answers =
                Acknowledgement.answers(received.header(), problems, "ISO" + id, received.at());
        byte[] bytes = bytes(answers);
        String outcome = answers.isEmpty() ? unsaid(problems) : answers.get(0).code();
        tables.messages().answered(id, bytes, outcome);
        LOG.info("Message {} answered {}", id, outcome);
        return bytes;
    }

    /** What the answer would say if its sender wanted one. */
    private static String unsaid(List<Problem> problems) {
        return problems.stream().anyMatch(Problem::isError) ? "AE" : "AA";
    }

    private static byte[] bytes(List<Acknowledgement> answers) {
        var bytes = new ByteArrayOutputStream();
        answers.forEach(answer -> bytes.writeBytes(answer.bytes()));
        return bytes.toByteArray();
    }

    private <T> T commit(Function<Tables, T> work) {
        try {
            return ledger.write(work).join();
        } catch (CompletionException e) {
            throw e.getCause() instanceof RuntimeException cause ? cause : e;
        }
    }
}

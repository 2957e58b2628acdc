package dev.isoline.recordings;

import dev.isoline.intake.Source;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.RecordingTable.RecordingRow;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.security.Principal;
import java.time.Clock;
import java.util.Locale;
import org.springframework.http.HttpStatus;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.server.ResponseStatusException;

/** {@code /recordings}: hand in a recording by HTTP, docs/flows/03-recording-in.md. */
@RestController
public class RecordingController {

    /** What is told about a recording; {@code problem} is empty unless it is held or failed. */
    public record Answer(String id, String sha256, String order, String state, String problem) {

        static Answer of(RecordingRow row) {
            return new Answer(
                    row.id(),
                    row.sha256(),
                    row.orderId(),
                    row.state().name().toLowerCase(Locale.ROOT),
                    row.problem());
        }
    }

    private final RecordingReception reception;
    private final Ledger ledger;
    private final Clock clock;

    public RecordingController(RecordingReception reception, Ledger ledger, Clock clock) {
        this.reception = reception;
        this.ledger = ledger;
        this.clock = clock;
    }

    /** The body is the file itself, of any size; it is streamed to disk. */
    @PostMapping("/recordings")
    public ResponseEntity<Answer> post(
            HttpServletRequest request,
            Principal client,
            @RequestParam(name = "order", defaultValue = "") String order)
            throws IOException {
        var source = new Source("recording", client.getName(), 0, clock.instant());
        var received = reception.receive(request.getInputStream(), order, source);
        var status = received.isNew() ? HttpStatus.ACCEPTED : HttpStatus.OK;
        return ResponseEntity.status(status).body(Answer.of(received.row()));
    }

    @GetMapping("/recordings/{id}")
    public Answer get(@PathVariable("id") String id) {
        return ledger.read(tables -> tables.recordings().byId(id))
                .map(Answer::of)
                .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
    }

    /** RFC 9457. */
    @ExceptionHandler
    ProblemDetail refused(RecordingRefused refused) {
        var status =
                switch (refused.reason()) {
                    case UNREADABLE -> HttpStatus.UNPROCESSABLE_ENTITY;
                    case UNKNOWN_ORDER -> HttpStatus.NOT_FOUND;
                    case NOT_EXPECTED, ANOTHER_OBJECT -> HttpStatus.CONFLICT;
                };
        return ProblemDetail.forStatusAndDetail(status, refused.getMessage());
    }
}

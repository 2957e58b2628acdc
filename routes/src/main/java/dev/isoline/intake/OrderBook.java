package dev.isoline.intake;

import dev.isoline.attach.OrderTask;
import dev.isoline.attach.PresentItems;
import dev.isoline.delivery.Outbox;
import dev.isoline.ledger.OrderTable.OrderRow;
import dev.isoline.ledger.TimelineTable;
import dev.isoline.order.Completeness;
import dev.isoline.order.OrderEvent;
import dev.isoline.order.OrderState;
import dev.isoline.order.Problem;
import dev.isoline.order.Problem.Kind;
import dev.isoline.order.Transitions;
import dev.isoline.order.Vocabulary;
import dev.isoline.settings.Senders;
import dev.isoline.worklist.WorklistEntries;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.springframework.stereotype.Component;

/** Moves orders from state to state; every move is stored, told and, where due, sent out. */
@Component
public class OrderBook {

    private final Senders senders;
    private final Outbox outbox;
    private final WorklistEntries worklist;

    public OrderBook(Senders senders, Outbox outbox, WorklistEntries worklist) {
        this.senders = senders;
        this.outbox = outbox;
        this.worklist = worklist;
    }

    /**
     * Judges an order that is new or on hold: complete and consistent, or held with the reasons.
     */
    OrderOutcome review(Known known, Source source, OrderRow row, List<Problem> contradictions) {
        var reasons = new ArrayList<>(contradictions);
        reasons.addAll(missing(known, row, vocabulary(source)));
        if (reasons.isEmpty()) {
            return outcome(release(known, source, row));
        }
        if (row.state() == OrderState.ON_HOLD && row.reasons().equals(asWarnings(reasons))) {
            return outcome(row);
        }
        return outcome(
                move(known, source, row.with(asWarnings(reasons)), OrderEvent.HELD).orElseThrow());
    }

    /**
     * Looks again at every order of a patient that waits: what a person must decide stays held, and
     * what is offered is offered as it is now.
     */
    List<OrderOutcome> reviewHeld(Known known, Source source, String patientId) {
        followPatient(known, patientId);
        return known.tables().orders().byPatient(patientId).stream()
                .filter(row -> row.state() == OrderState.ON_HOLD)
                .map(row -> review(known, source, row, standing(row, source)))
                .toList();
    }

    /**
     * The row after the event, stored with everything that follows from it; empty when the table of
     * transitions refuses the event.
     */
    Optional<OrderRow> move(Known known, Source source, OrderRow row, OrderEvent event) {
        return Transitions.next(row.state(), event)
                .map(state -> moved(known, source, reasonsFor(state, row), event, state));
    }

    /** What an order was held for is over when it is no longer held. */
    private static OrderRow reasonsFor(OrderState state, OrderRow row) {
        return state == OrderState.ON_HOLD ? row : row.with(List.of());
    }

    /** Complete: accepted and offered to the recorder station in one go. */
    private OrderRow release(Known known, Source source, OrderRow row) {
        var complete = row.with(List.of());
        var accepted = stored(known, source, complete, OrderEvent.RELEASED, OrderState.ACCEPTED);
        var ready = stored(known, source, accepted, OrderEvent.SCHEDULED, OrderState.READY);
        outbox.order(known.tables(), known.order(ready), known.at());
        return ready;
    }

    private OrderRow moved(
            Known known, Source source, OrderRow row, OrderEvent event, OrderState state) {
        OrderRow now = stored(known, source, row, event, state);
        outbox.status(known.tables(), known.order(now), known.at());
        return now;
    }

    private OrderRow stored(
            Known known, Source source, OrderRow row, OrderEvent event, OrderState state) {
        var now = row.with(state, known.at());
        known.tables().orders().update(now);
        var order = known.find(ServiceRequest.class, row.id()).orElseThrow().copy();
        order.setStatus(ServiceRequestStatus.fromCode(state.serviceRequestStatus()));
        known.put(insured(known, order, row.patientId()));
        known.put(OrderTask.of(order, state, now.reasons(), known.at()));
        tell(known, source, now, event);
        offer(known, row.state(), now);
        return now;
    }

    /** Recorder stations see an order while it is ready, and no longer. */
    private void offer(Known known, OrderState before, OrderRow now) {
        if (WorklistEntries.offers(now.state())) {
            worklist.offer(known.tables(), known.order(now), known.at());
        } else if (WorklistEntries.offers(before)) {
            worklist.withdraw(known.tables(), now.id());
        }
    }

    /** What recorder stations see of a patient's orders follows what is told about the patient. */
    private void followPatient(Known known, String patientId) {
        if (known.hasUpdated()) {
            known.tables().orders().byPatient(patientId).stream()
                    .filter(row -> WorklistEntries.offers(row.state()))
                    .forEach(row -> worklist.offer(known.tables(), known.order(row), known.at()));
        }
    }

    /** Insurance told after the order belongs to it until the order is acted on. */
    private static ServiceRequest insured(Known known, ServiceRequest order, String patientId) {
        var coverages = PatientRegistry.coverages(known, patientId);
        return coverages.isEmpty()
                ? order
                : order.setInsurance(
                        coverages.stream().map(c -> new Reference(References.to(c))).toList());
    }

    private List<Problem> missing(Known known, OrderRow row, Vocabulary vocabulary) {
        var present =
                PresentItems.of(
                        known.find(ServiceRequest.class, row.id()).orElseThrow(),
                        known.find(Patient.class, row.patientId()).orElseThrow(),
                        PatientRegistry.coverages(known, row.patientId()),
                        known::find);
        return Completeness.missing(senders.required(row.sender()), present, vocabulary);
    }

    /** A contradiction is for a person: only what the operator sends settles it. */
    private static List<Problem> standing(OrderRow row, Source source) {
        return source.sender().equals(Senders.OPERATOR)
                ? List.of()
                : row.reasons().stream().filter(r -> r.kind() == Kind.CONFLICT).toList();
    }

    private static void tell(Known known, Source source, OrderRow row, OrderEvent event) {
        String detail =
                String.join(" ", row.reasons().stream().map(Problem::location).distinct().toList());
        known.tables()
                .timeline()
                .add(
                        new TimelineTable.Entry(
                                row.id(),
                                known.at(),
                                event.name(),
                                source.channel() + ":" + source.sender(),
                                (row.state().name() + " " + detail).trim()));
    }

    /** A held order is accepted and stored, so what it lacks is told as a warning. */
    private static List<Problem> asWarnings(List<Problem> problems) {
        return problems.stream()
                .map(p -> Problem.warning(p.kind(), p.location(), p.text()))
                .toList();
    }

    static Vocabulary vocabulary(Source source) {
        return source.channel().equals("mllp") ? Vocabulary.HL7_V2 : Vocabulary.FHIR;
    }

    static OrderOutcome outcome(OrderRow row, Problem... more) {
        return new OrderOutcome(
                row.id(),
                row.state(),
                Stream.concat(row.reasons().stream(), Stream.of(more)).toList());
    }
}

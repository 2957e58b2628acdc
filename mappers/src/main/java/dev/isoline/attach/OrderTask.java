package dev.isoline.attach;

import dev.isoline.fhir.Systems;
import dev.isoline.fhir.UtcTime;
import dev.isoline.order.OrderState;
import dev.isoline.order.Problem;
import dev.isoline.order.StableId;
import java.time.Instant;
import java.util.List;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Task.TaskIntent;
import org.hl7.fhir.r4.model.Task.TaskStatus;

/** Where an order stands, as FHIR R4 tells it: a Task that asks to fulfil the ServiceRequest. */
public final class OrderTask {

    private static final String TASK_CODE = "http://hl7.org/fhir/CodeSystem/task-code";

    private OrderTask() {}

    /**
     * @param order with its id; the task refers to it and to its subject
     * @param reasons why it is held, refused or failed; empty otherwise
     * @param at since when it stands there
     */
    public static Task of(
            ServiceRequest order, OrderState state, List<Problem> reasons, Instant at) {
        String orderId = order.getIdElement().getIdPart();
        var task = new Task();
        task.setId(StableId.of("Task", orderId));
        task.addIdentifier().setSystem(Systems.ORDER_TASK).setValue(orderId);
        task.addBasedOn(new Reference("ServiceRequest/" + orderId));
        task.setStatus(TaskStatus.fromCode(state.taskStatus()));
        task.setBusinessStatus(businessStatus(state));
        task.setIntent(TaskIntent.ORDER);
        task.setCode(new CodeableConcept(new Coding(TASK_CODE, "fulfill", null)));
        task.setFocus(new Reference("ServiceRequest/" + orderId));
        task.setFor(order.getSubject().copy());
        if (order.hasAuthoredOn()) {
            task.setAuthoredOnElement(order.getAuthoredOnElement().copy());
        }
        task.setLastModifiedElement(UtcTime.dateTime(at));
        if (order.hasRequester()) {
            task.setRequester(order.getRequester().copy());
        }
        if (!reasons.isEmpty()) {
            task.getStatusReason().setText(text(reasons));
        }
        return task;
    }

    private static CodeableConcept businessStatus(OrderState state) {
        return new CodeableConcept(
                new Coding(Systems.BUSINESS_STATUS, state.businessStatus(), null));
    }

    private static String text(List<Problem> reasons) {
        return reasons.stream()
                .map(r -> r.location().isEmpty() ? r.text() : r.location() + ": " + r.text())
                .collect(Collectors.joining(" "));
    }
}

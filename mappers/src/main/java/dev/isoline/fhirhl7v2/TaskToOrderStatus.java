package dev.isoline.fhirhl7v2;

import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.model.v251.message.ORM_O01;
import ca.uhn.hl7v2.model.v251.segment.OBR;
import ca.uhn.hl7v2.model.v251.segment.ORC;
import dev.isoline.hl7v2.Er7Writer;
import dev.isoline.order.OrderState;
import java.util.Arrays;
import java.util.Optional;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Task;

/**
 * Where an order stands to ORM^O01 (HL7 v2.5.1 ch. 4.4.1), which every clinic that sends orders can
 * read, OMG^O19 not so. The codes are columns of {@link OrderState}; rows:
 * docs/mappings/task-to-order-status.md.
 */
public final class TaskToOrderStatus {

    private TaskToOrderStatus() {}

    /**
     * @return the message in UTF-8, every segment ended by CR; empty for a state that no one is
     *     told of
     */
    public static Optional<byte[]> map(
            Task task, ServiceRequest order, Patient patient, MessageContext context) {
        return state(task)
                .filter(state -> !state.orderControl().isEmpty())
                .map(state -> write(state, task, order, patient, context));
    }

    private static Optional<OrderState> state(Task task) {
        String code = task.getBusinessStatus().getCodingFirstRep().getCode();
        return Arrays.stream(OrderState.values())
                .filter(state -> state.businessStatus().equals(code))
                .findFirst();
    }

    private static byte[] write(
            OrderState state,
            Task task,
            ServiceRequest order,
            Patient patient,
            MessageContext context) {
        try {
            var types = new DataTypes(context);
            var message = new ORM_O01();
            Msh.fill(message.getMSH(), "ORM", "O01", context);
            PatientToPid.map(patient, message.getPATIENT().getPID(), types);
            orc(state, task, order, message.getORDER().getORC(), types);
            obr(state, task, order, message.getORDER().getORDER_DETAIL().getOBR(), types);
            return Er7Writer.write(message);
        } catch (HL7Exception e) {
            throw new IllegalArgumentException("the order status does not fit ORM^O01", e);
        }
    }

    private static void orc(
            OrderState state, Task task, ServiceRequest order, ORC orc, DataTypes types)
            throws HL7Exception {
        orc.getOrc1_OrderControl().setValue(control(state));
        OrderNumbers.placer(order, orc.getOrc2_PlacerOrderNumber(), types);
        OrderNumbers.filler(order, orc.getOrc3_FillerOrderNumber(), types);
        orc.getOrc5_OrderStatus().setValue(state.orderStatus());
        DateTimeToTs.map(task.getLastModifiedElement(), orc.getOrc9_DateTimeOfTransaction());
        DataTypes.ce(task.getStatusReason(), orc.getOrc16_OrderControlCodeReason());
    }

    /** RE announces observations, which ORU^R01 carries; an order message says status changed. */
    private static String control(OrderState state) {
        return state.orderControl().equals("RE") ? "SC" : state.orderControl();
    }

    private static void obr(
            OrderState state, Task task, ServiceRequest order, OBR obr, DataTypes types)
            throws HL7Exception {
        obr.getObr1_SetIDOBR().setValue("1");
        OrderNumbers.placer(order, obr.getObr2_PlacerOrderNumber(), types);
        OrderNumbers.filler(order, obr.getObr3_FillerOrderNumber(), types);
        DataTypes.ce(order.getCode(), obr.getObr4_UniversalServiceIdentifier());
        DateTimeToTs.map(
                task.getLastModifiedElement(), obr.getObr22_ResultsRptStatusChngDateTime());
        obr.getObr24_DiagnosticServSectID().setValue("EC");
        obr.getObr25_ResultStatus().setValue(state.resultStatus());
    }
}

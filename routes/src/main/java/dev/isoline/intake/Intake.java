package dev.isoline.intake;

import dev.isoline.hl7v2fhir.MappedMessage;
import dev.isoline.ledger.Tables;
import dev.isoline.order.Problem;
import java.util.List;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;

/**
 * Where HL7 v2 and FHIR traffic about the same patient meet. Called within one unit of work of the
 * ledger; throws {@link dev.isoline.order.ContentError} to refuse, which undoes the whole unit.
 */
public interface Intake {

    /**
     * Stores what a message says, attaches what is known, merges patients, moves its orders on.
     *
     * @return what its sender is to be told, order by order
     */
    List<Problem> message(Tables tables, Source source, MappedMessage message);

    /**
     * Stores resources of one FHIR request and moves every order they touch.
     *
     * @param resources with server ids and relative references, as they shall be stored
     * @param claimed patients a conditional create found here, under the id it found: what the
     *     request says about them is compared, not stored
     */
    List<OrderOutcome> resources(
            Tables tables, Source source, List<Resource> resources, List<Patient> claimed);
}

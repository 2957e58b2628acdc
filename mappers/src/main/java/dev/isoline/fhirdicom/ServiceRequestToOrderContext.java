package dev.isoline.fhirdicom;

import dev.isoline.ecgdicom.OrderContext;
import org.hl7.fhir.r4.model.Encounter;
import org.hl7.fhir.r4.model.Enumerations.AdministrativeGender;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Practitioner;
import org.hl7.fhir.r4.model.ServiceRequest;

/**
 * ServiceRequest, Patient and requester (FHIR R4) to what DICOM objects need of an order.
 *
 * <p>Identifiers by their type of table v2-0203: PLAC, FILL, ACSN; MR for the patient. Requested
 * Procedure ID and Scheduled Procedure Step ID are the accession number (common practice, no
 * source: one procedure of one step an accession). Admission ID is the visit number (VN) of the
 * encounter.
 */
public final class ServiceRequestToOrderContext {

    private static final String DICOM_UID = "urn:dicom:uid";
    private static final String OID = "urn:oid:";

    private ServiceRequestToOrderContext() {}

    /**
     * @param requester of the order; null when it is unknown
     * @throws dev.isoline.order.ContentError when a name holds what VR PN has no place for
     */
    public static OrderContext map(ServiceRequest order, Patient patient, Practitioner requester) {
        return map(order, patient, requester, null);
    }

    /**
     * @param visit the order was placed in; null when it is unknown
     */
    public static OrderContext map(
            ServiceRequest order, Patient patient, Practitioner requester, Encounter visit) {
        var accession = OrderIdentifiers.ofType("ACSN", order.getIdentifier());
        return new OrderContext(
                subject(patient),
                studyUid(order),
                accession,
                OrderIdentifiers.ofType("PLAC", order.getIdentifier()),
                OrderIdentifiers.ofType("FILL", order.getIdentifier()),
                accession.value(),
                CodeableConceptToCode.map(order.getCode()),
                referringPhysician(requester),
                accession.value(),
                admission(visit));
    }

    private static OrderContext.Identifier admission(Encounter visit) {
        return visit == null
                ? OrderContext.Identifier.NONE
                : OrderIdentifiers.ofType("VN", visit.getIdentifier());
    }

    private static String referringPhysician(Practitioner requester) {
        return requester == null ? "" : HumanNameToPn.map(requester.getName(), "Practitioner.name");
    }

    private static OrderContext.Subject subject(Patient patient) {
        return new OrderContext.Subject(
                HumanNameToPn.map(patient.getName(), "Patient.name"),
                OrderIdentifiers.ofType("MR", patient.getIdentifier()),
                birthDate(patient),
                sex(patient.getGender()));
    }

    /** VR DA needs the whole date; a year or month alone stays out. */
    private static String birthDate(Patient patient) {
        String date = patient.getBirthDateElement().getValueAsString();
        boolean whole = date != null && date.matches("\\d{4}-\\d{2}-\\d{2}");
        return whole ? date.replace("-", "") : "";
    }

    /** Patient's Sex (0010,0040) has no word for unknown but the empty one. */
    private static String sex(AdministrativeGender gender) {
        if (gender == null) {
            return "";
        }
        return switch (gender) {
            case MALE -> "M";
            case FEMALE -> "F";
            case OTHER -> "O";
            default -> "";
        };
    }

    private static String studyUid(ServiceRequest order) {
        return order.getIdentifier().stream()
                .filter(identifier -> DICOM_UID.equals(identifier.getSystem()))
                .map(Identifier::getValue)
                .filter(value -> value != null && value.startsWith(OID))
                .map(value -> value.substring(OID.length()))
                .findFirst()
                .orElse("");
    }
}

package dev.isoline.hl7v2fhir;

import static dev.isoline.hl7v2fhir.Fields.each;

import ca.uhn.hl7v2.model.v251.datatype.XON;
import ca.uhn.hl7v2.model.v251.segment.ORC;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.datatype.XadToAddress;
import dev.isoline.hl7v2fhir.datatype.XonToOrganization;
import dev.isoline.hl7v2fhir.datatype.XtnToContactPoint;
import dev.isoline.order.StableId;
import java.util.List;
import org.hl7.fhir.r4.model.DomainResource;
import org.hl7.fhir.r4.model.Organization;
import org.hl7.fhir.r4.model.PractitionerRole;
import org.hl7.fhir.r4.model.Reference;

/**
 * ORC-21 to ORC-23 (HL7 v2.5.1 ch. 4.5.1) to the ordering facility and the orderer's role in it.
 * Rows: ORC[ServiceRequest]; the request itself refers to the practitioner,
 * docs/mappings/orc-to-servicerequest.md.
 */
final class OrcToPractitionerRole {

    private OrcToPractitionerRole() {}

    /** Empty without ORC-21. */
    static List<DomainResource> map(ORC orc, Reference practitioner, Reading in) {
        XON[] names = orc.getOrc21_OrderingFacilityName();
        Organization facility =
                names.length == 0
                        ? null
                        : XonToOrganization.map(names[0], in.at("ORC-21")).orElse(null);
        if (facility == null) {
            return List.of();
        }
        each(
                orc.getOrc22_OrderingFacilityAddress(),
                f -> XadToAddress.map(f, in.at("ORC-22")),
                facility::addAddress);
        each(
                orc.getOrc23_OrderingFacilityPhoneNumber(),
                f -> XtnToContactPoint.map(f, in.at("ORC-23")),
                facility::addTelecom);
        String key =
                facility.hasName()
                        ? facility.getName()
                        : facility.getIdentifierFirstRep().getValue();
        facility.setId(StableId.of("Organization", in.systems().ofSender(), key));
        var role =
                new PractitionerRole()
                        .setPractitioner(practitioner)
                        .setOrganization(
                                new Reference(
                                        "Organization/" + facility.getIdElement().getIdPart()));
        role.setId(
                StableId.of(
                        "PractitionerRole",
                        practitioner.getReference(),
                        in.systems().ofSender(),
                        key));
        return List.of(facility, role);
    }
}

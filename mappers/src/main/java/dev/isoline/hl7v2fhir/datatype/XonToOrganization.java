package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.v251.datatype.XON;
import dev.isoline.hl7v2fhir.table.Table0203;
import java.util.Optional;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Organization;
import org.hl7.fhir.r4.model.StringType;

/**
 * XON (HL7 v2.5.1 ch. 2.A.87) to Organization. Rows: XON[Organization];
 * docs/mappings/xon-to-organization.md.
 */
public final class XonToOrganization {

    private XonToOrganization() {}

    /** Empty when neither a name nor a number is given; the caller sets the id. */
    public static Optional<Organization> map(XON xon, Reading in) {
        var organization = new Organization();
        organization.setName(StToString.map(xon.getXon1_OrganizationName()));
        identifier(xon, in).ifPresent(organization::addIdentifier);
        return organization.isEmpty() ? Optional.empty() : Optional.of(organization);
    }

    private static Optional<Identifier> identifier(XON xon, Reading in) {
        String newer = StToString.map(xon.getXon10_OrganizationIdentifier());
        String value = newer == null ? StToString.map(xon.getXon3_IDNumber()) : newer;
        if (value == null) {
            return Optional.empty();
        }
        String system = in.systems().of(xon.getXon6_AssigningAuthority());
        var identifier =
                new Identifier()
                        .setValue(value)
                        .setSystem(system == null ? in.systems().ofSender("organization") : system);
        String checkDigit = StToString.map(xon.getXon4_CheckDigit());
        if (checkDigit != null) {
            identifier.addExtension(CxToIdentifier.CHECK_DIGIT, new StringType(checkDigit));
        }
        String type = StToString.map(xon.getXon7_IdentifierTypeCode());
        if (type != null) {
            identifier.setType(Table0203.toFhir(type));
        }
        return Optional.of(identifier);
    }
}

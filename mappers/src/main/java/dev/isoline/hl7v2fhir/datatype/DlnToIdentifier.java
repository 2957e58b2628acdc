package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.v251.datatype.DLN;
import dev.isoline.hl7v2fhir.table.Table0203;
import java.util.Optional;
import org.hl7.fhir.r4.model.Identifier;

/**
 * DLN (HL7 v2.5.1 ch. 2.A.19) to Identifier. Rows: DLN[Identifier];
 * docs/mappings/dln-to-identifier.md.
 */
public final class DlnToIdentifier {

    private DlnToIdentifier() {}

    /** Empty when DLN.1 is. */
    public static Optional<Identifier> map(DLN dln, Reading in) {
        String value = StToString.map(dln.getDln1_LicenseNumber());
        if (value == null) {
            return Optional.empty();
        }
        String issuer = StToString.map(dln.getDln2_IssuingStateProvinceCountry());
        var identifier =
                new Identifier()
                        .setType(Table0203.toFhir("DL"))
                        .setSystem(
                                issuer == null
                                        ? in.systems().ofSender("driver-licence")
                                        : in.systems().of(issuer, null, null))
                        .setValue(value);
        TsToDateTime.map(dln.getDln3_ExpirationDate(), in)
                .ifPresent(end -> identifier.getPeriod().setEndElement(end));
        return Optional.of(identifier);
    }
}

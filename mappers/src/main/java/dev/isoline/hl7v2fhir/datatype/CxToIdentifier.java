package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.v251.datatype.CX;
import dev.isoline.hl7v2fhir.table.Table0203;
import java.util.Optional;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.StringType;

/**
 * CX (HL7 v2.5.1 ch. 2.A.14) to Identifier. Rows: CX[Identifier];
 * docs/mappings/cx-to-identifier.md.
 */
public final class CxToIdentifier {

    static final String CHECK_DIGIT =
            "http://hl7.org/fhir/StructureDefinition/identifier-checkDigit";

    private CxToIdentifier() {}

    /** Empty when CX.1 is; the identifier has no system when CX.4 is empty. */
    public static Optional<Identifier> map(CX cx, Reading in) {
        String value = StToString.map(cx.getCx1_IDNumber());
        if (value == null) {
            return Optional.empty();
        }
        var identifier =
                new Identifier()
                        .setValue(value)
                        .setSystem(in.systems().of(cx.getCx4_AssigningAuthority()));
        String checkDigit = StToString.map(cx.getCx2_CheckDigit());
        if (checkDigit != null) {
            identifier.addExtension(CHECK_DIGIT, new StringType(checkDigit));
        }
        String type = StToString.map(cx.getCx5_IdentifierTypeCode());
        if (type != null) {
            identifier.setType(Table0203.toFhir(type));
        }
        identifier.setPeriod(
                DrToPeriod.map(cx.getCx7_EffectiveDate(), cx.getCx8_ExpirationDate(), in));
        return Optional.of(identifier);
    }
}

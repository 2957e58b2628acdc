package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.v251.datatype.EI;
import dev.isoline.hl7v2fhir.table.Table0203;
import java.util.Optional;
import org.hl7.fhir.r4.model.Identifier;

/**
 * EI (HL7 v2.5.1 ch. 2.A.28) to Identifier. Rows: EI[Identifier-Extension];
 * docs/mappings/ei-to-identifier.md.
 */
public final class EiToIdentifier {

    private EiToIdentifier() {}

    /**
     * @param typeCode code of table 0203 that says what the number is, such as {@code PLAC}; null:
     *     none
     * @return empty when EI.1 is; without EI.2 to EI.4 the system is the sender's own
     */
    public static Optional<Identifier> map(EI ei, String typeCode, Reading in) {
        String value = StToString.map(ei.getEi1_EntityIdentifier());
        if (value == null) {
            return Optional.empty();
        }
        String system =
                in.systems()
                        .of(
                                StToString.map(ei.getEi2_NamespaceID()),
                                StToString.map(ei.getEi3_UniversalID()),
                                StToString.map(ei.getEi4_UniversalIDType()));
        return Optional.of(
                new Identifier()
                        .setType(typeCode == null ? null : Table0203.toFhir(typeCode))
                        .setSystem(system == null ? in.systems().ofSender() : system)
                        .setValue(value));
    }
}

package dev.isoline.fhirhl7v2;

import ca.uhn.hl7v2.model.DataTypeException;
import ca.uhn.hl7v2.model.v251.datatype.EI;
import dev.isoline.fhir.BusinessIdentifier;
import org.hl7.fhir.r4.model.ServiceRequest;

/** Placer and filler order number (ORC-2 and -3, the same in OBR-2 and -3; HL7 v2.5.1 ch. 4.5). */
final class OrderNumbers {

    private OrderNumbers() {}

    static void placer(ServiceRequest order, EI ei, DataTypes types) throws DataTypeException {
        number(order, "PLAC", ei, types);
    }

    static void filler(ServiceRequest order, EI ei, DataTypes types) throws DataTypeException {
        number(order, "FILL", ei, types);
    }

    private static void number(ServiceRequest order, String type, EI ei, DataTypes types)
            throws DataTypeException {
        for (var identifier : order.getIdentifier()) {
            if (BusinessIdentifier.hasType(identifier, type)) {
                types.ei(identifier, ei);
                return;
            }
        }
    }
}

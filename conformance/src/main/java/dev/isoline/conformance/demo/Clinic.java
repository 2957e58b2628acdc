package dev.isoline.conformance.demo;

import dev.isoline.conformance.partner.FhirPartner;
import dev.isoline.conformance.partner.MllpListener;
import java.io.Closeable;
import java.io.IOException;

/**
 * A clinic's receiving side, which takes both HL7 v2 and FHIR.
 *
 * @param folder its sub-folder of the demo's
 * @param order placer number of its order
 */
record Clinic(String folder, String order, MllpListener mllp, FhirPartner fhir)
        implements Closeable {

    static Clinic open(String folder, String order) throws IOException {
        return new Clinic(folder, order, new MllpListener(), new FhirPartner());
    }

    @Override
    public void close() throws IOException {
        mllp.close();
        fhir.close();
    }
}

package dev.isoline.ecgdicom;

import dev.isoline.dicom.Uid;
import java.util.stream.Stream;

/**
 * What an order says about the objects made for it; an empty text is an unknown value.
 *
 * @param patient whom the recording belongs to
 * @param studyInstanceUid when the order names one, else empty: then it is derived from the order
 *     number
 * @param accession accession number
 * @param placer placer order number
 * @param filler filler order number
 * @param requestedProcedureId Requested Procedure ID (0040,1001)
 * @param procedure what was ordered
 * @param referringPhysician name in the form of VR PN
 * @param scheduledProcedureStepId Scheduled Procedure Step ID (0040,0009), as the worklist has it
 * @param admission the visit the order was placed in
 */
public record OrderContext(
        Subject patient,
        String studyInstanceUid,
        Identifier accession,
        Identifier placer,
        Identifier filler,
        String requestedProcedureId,
        Code procedure,
        String referringPhysician,
        String scheduledProcedureStepId,
        Identifier admission) {

    /** An order of one step, which has the number of its procedure, and of no known visit. */
    public OrderContext(
            Subject patient,
            String studyInstanceUid,
            Identifier accession,
            Identifier placer,
            Identifier filler,
            String requestedProcedureId,
            Code procedure,
            String referringPhysician) {
        this(
                patient,
                studyInstanceUid,
                accession,
                placer,
                filler,
                requestedProcedureId,
                procedure,
                referringPhysician,
                requestedProcedureId,
                Identifier.NONE);
    }

    /**
     * The patient.
     *
     * @param name in the form of VR PN
     * @param id identifier and who assigned it
     * @param birthDate {@code YYYYMMDD}
     * @param sex {@code M}, {@code F} or {@code O}
     */
    public record Subject(String name, Identifier id, String birthDate, String sex) {}

    /** A value that one authority assigned. */
    public record Identifier(String value, Authority authority) {

        public static final Identifier NONE = new Identifier("", Authority.NONE);
    }

    /**
     * Who assigned an identifier.
     *
     * @param name short name
     * @param universalId OID or URI
     * @param universalIdType {@code ISO} for an OID, {@code URI}
     */
    public record Authority(String name, String universalId, String universalIdType) {

        public static final Authority NONE = new Authority("", "", "");

        public boolean isUnknown() {
            return name.isEmpty() && universalId.isEmpty();
        }
    }

    /**
     * A coded concept.
     *
     * @param scheme DICOM coding scheme designator
     */
    public record Code(String value, String scheme, String meaning) {

        public static final Code NONE = new Code("", "", "");
    }

    /** The study the objects belong to; the same order has the same. */
    public String studyUid() {
        return studyInstanceUid.isEmpty()
                ? Uid.of("study", number().authority().universalId(), number().value())
                : studyInstanceUid;
    }

    /** The number the order is known by: placer's, else filler's, else the accession number. */
    private Identifier number() {
        return Stream.of(placer, filler, accession)
                .filter(i -> !i.value().isEmpty())
                .findFirst()
                .orElse(Identifier.NONE);
    }
}

package dev.isoline.dicom.spi;

/** SOP classes of the services, PS3.4; those of stored objects stand with their IODs. */
public final class SopClass {

    /** PS3.4 annex A. */
    public static final String VERIFICATION = "1.2.840.10008.1.1";

    /** Modality Worklist Information Model - FIND, PS3.4 K.6.1. */
    public static final String MODALITY_WORKLIST_FIND = "1.2.840.10008.5.1.4.31";

    /** Storage Commitment Push Model, PS3.4 J.3. */
    public static final String STORAGE_COMMITMENT = "1.2.840.10008.1.20.1";

    /** Its well-known instance, PS3.4 J.3.5. */
    public static final String STORAGE_COMMITMENT_INSTANCE = "1.2.840.10008.1.20.1.1";

    private SopClass() {}
}

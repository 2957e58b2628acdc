package dev.isoline.dimse;

/** A DICOM service, as both sides of the component know it. */
public enum DimseService {
    /** C-ECHO, PS3.7 9.1.5. */
    ECHO,
    /** C-STORE, PS3.7 9.1.1. */
    STORE,
    /** C-FIND, PS3.7 9.1.2. */
    FIND,
    /** Storage commitment, PS3.4 annex J: the producer asks for it, the consumer takes results. */
    COMMITMENT
}

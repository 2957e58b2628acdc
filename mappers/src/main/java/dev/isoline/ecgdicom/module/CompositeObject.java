package dev.isoline.ecgdicom.module;

import dev.isoline.ecgdicom.OrderContext;
import java.time.OffsetDateTime;
import java.util.Optional;

/** What the modules that all our objects have are made from. */
public interface CompositeObject {

    /** Who and why. */
    OrderContext order();

    String sopClassUid();

    String sopInstanceUid();

    Series series();

    /** Instance Number, from 1. */
    int number();

    /** When the content begins, where that is known. */
    Optional<OffsetDateTime> begins();

    /** The device as it names itself, empty where it does not. */
    String equipment();

    /**
     * One series of the study.
     *
     * @param uid Series Instance UID
     * @param number Series Number
     * @param description Series Description
     * @param start of the recording, where it is known; the study begins with it
     */
    record Series(String uid, int number, String description, Optional<OffsetDateTime> start) {}
}

package dev.isoline.fhirdicom;

/**
 * Where a recorder is fitted, PS3.3 C.4.10.
 *
 * @param aeTitle Scheduled Station AE Title (0040,0001); empty: any station may do it
 * @param name Scheduled Station Name (0040,0010)
 * @param location Scheduled Procedure Step Location (0040,0011) of orders that name none
 */
public record Station(String aeTitle, String name, String location) {

    /** Whichever station asks. */
    public static final Station ANY = new Station("", "", "");
}

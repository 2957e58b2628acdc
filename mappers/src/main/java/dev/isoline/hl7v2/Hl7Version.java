package dev.isoline.hl7v2;

/** Order of the versions of HL7 table 0104. */
final class Hl7Version {

    private Hl7Version() {}

    /** False when {@code version} is no version at all: what is unknown is taken to be new. */
    static boolean isBefore(String version, String other) {
        return version.matches("2\\.\\d(\\.\\d)?") && version.compareTo(other) < 0;
    }
}

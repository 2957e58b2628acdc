package dev.isoline.delivery;

/** The ways to the archives. */
@FunctionalInterface
public interface ArchiveLines {

    /**
     * @param destination name of a destination of kind {@code archive}
     */
    ArchiveLine to(String destination);
}

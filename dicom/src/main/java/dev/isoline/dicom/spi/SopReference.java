package dev.isoline.dicom.spi;

/**
 * An instance by its SOP class and SOP Instance UID.
 *
 * @param sopClass SOP Class UID
 * @param sopInstance SOP Instance UID
 */
public record SopReference(String sopClass, String sopInstance) {}

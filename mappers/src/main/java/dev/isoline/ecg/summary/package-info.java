/**
 * What is reported of a recording, as records that compute nothing: the one form from which JSON,
 * FHIR, HL7 v2 and DICOM are made. Thresholds with their defaults and sources: {@link
 * dev.isoline.ecg.summary.Threshold}.
 */
package dev.isoline.ecg.summary;

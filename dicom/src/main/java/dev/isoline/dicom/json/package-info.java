/**
 * The DICOM JSON Model, PS3.18 annex F (2025), both ways.
 *
 * <p>{@link dev.isoline.dicom.json.DicomJsonWriter} streams data sets as JSON in UTF-8; bulk goes
 * in line or is named by a URI. {@link dev.isoline.dicom.json.DicomJsonReader} reads them within
 * limits, because JSON comes from the network. Specific Character Set (0008,0005) says what the
 * data set was, not what the JSON is (F.2.2 note 3): it passes unchanged.
 */
package dev.isoline.dicom.json;

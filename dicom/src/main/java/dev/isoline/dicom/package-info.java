/**
 * DICOM data sets and Part 10 files, with nothing but the JDK.
 *
 * <p>A {@link dev.isoline.dicom.DataSet} is an ordered map of {@link dev.isoline.dicom.Element}s: a
 * tag, a {@link dev.isoline.dicom.Vr} and a {@link dev.isoline.dicom.Value}. A value is bytes as
 * they stand in the stream, a list of nested data sets, or a {@link dev.isoline.dicom.BulkValue}
 * that knows its length and where its bytes come from, so that a day of samples is never in memory.
 * {@link dev.isoline.dicom.DataSetWriter} and {@link dev.isoline.dicom.DataSetReader} are PS3.5
 * chapter 7 for Explicit and Implicit VR Little Endian; {@link dev.isoline.dicom.Part10} puts the
 * preamble and group 0002 of PS3.10 in front.
 *
 * <p>What is read can be written again: text stays in the bytes and character set it came in,
 * private elements and unknown ones are kept. What cannot be read ends in a {@link
 * dev.isoline.dicom.DicomException} that names the tag and holds no value.
 */
package dev.isoline.dicom;

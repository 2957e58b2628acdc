/**
 * The built-in engine: DIMSE messages and services, PS3.7, over {@link dev.isoline.dicom.upper}.
 *
 * <p>{@code Messages} puts command sets and data sets into fragments and takes them out again, data
 * sets as streams. {@code ScuAssociation} is the requestor's side, {@code ScpAssociation} the
 * acceptor's; a service that has two sides has a class for each: {@code StoreScu}, {@code StoreScp}
 * and so on. {@link dev.isoline.dicom.dimse.BuiltInEngine} is the one public class; the rest of the
 * program knows {@link dev.isoline.dicom.spi} only.
 */
package dev.isoline.dicom.dimse;

/**
 * What the gateway needs of a DICOM network engine, and nothing of the one that does it.
 *
 * <p>A {@link dev.isoline.dicom.spi.DicomEngine} opens {@link dev.isoline.dicom.spi.Association}s
 * to a {@link dev.isoline.dicom.spi.Remote} (C-ECHO, C-STORE, C-FIND, storage commitment) and
 * {@link dev.isoline.dicom.spi.Listener}s for one {@link dev.isoline.dicom.spi.Local} application
 * entity, which hand what arrives to the providers of {@link dev.isoline.dicom.spi.Services}.
 * Everything else here is a value. Data sets are those of {@link dev.isoline.dicom}, whichever
 * engine carries them.
 *
 * <p>Errors: an association that was not accepted is a {@link dev.isoline.dicom.spi.Rejection}, one
 * that ended early an {@link dev.isoline.dicom.spi.Abort}, a wait that took too long a {@link
 * java.net.SocketTimeoutException}, a broken connection another {@link java.io.IOException}. What
 * the peer's application answers is never an exception but a {@link dev.isoline.dicom.spi.Status}.
 * No exception text holds patient detail.
 */
package dev.isoline.dicom.spi;

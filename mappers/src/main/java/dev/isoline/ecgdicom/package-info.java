/**
 * ECG recordings as DICOM waveform objects.
 *
 * <p>{@link dev.isoline.ecgdicom.iod} lists an object's modules in the order of PS3.3, {@link
 * dev.isoline.ecgdicom.module} has one class for each of them. An {@link
 * dev.isoline.ecgdicom.OrderContext} brings who and why, a {@link dev.isoline.ecg.Recording} the
 * samples, and an {@link dev.isoline.ecgdicom.ObjectSink} takes the objects as they are written.
 */
package dev.isoline.ecgdicom;

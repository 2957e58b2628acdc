/**
 * The DICOM upper layer over TCP/IP and TLS, PS3.8.
 *
 * <p>{@code StateTable} is table 9-10, {@code Action} tables 9-6 to 9-9; {@code Machine} runs them.
 * {@link dev.isoline.dicom.upper.UpperLayer} is the service provider of one association: blocking,
 * one reading thread, writes from any. {@code Watch} holds its timers: ARTIM where the table starts
 * it, and those the standard leaves to the implementation. {@link dev.isoline.dicom.upper.Server}
 * accepts connections, {@link dev.isoline.dicom.upper.Acceptance} negotiates.
 *
 * <p>Received data is not held: a fragment is read from the connection's buffer when its user asks.
 */
package dev.isoline.dicom.upper;

/**
 * The samples of a waveform object as numbers, PS3.3 C.10.9: one {@link
 * dev.isoline.dicom.waveform.MultiplexGroup} an item of Waveform Sequence, read piece by piece.
 */
package dev.isoline.dicom.waveform;

/** What is known of a recording as items of Waveform Annotation Sequence, PS3.3 C.10.10. */
package dev.isoline.ecgdicom.annotation;

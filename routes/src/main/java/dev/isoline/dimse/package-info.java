/**
 * DICOM network services as a Camel component: a thin skin over {@link dev.isoline.dicom.spi}, and
 * nothing in it that knows an order or a patient.
 */
package dev.isoline.dimse;

/**
 * The engine over dcm4che, built with {@code -Pdcm4che}: its upper layer and message services in
 * the place of the built-in ones. Data sets stay {@link dev.isoline.dicom.DataSet}; dcm4che sees
 * bytes wherever it can.
 */
package dev.isoline.dicom.dcm4che;

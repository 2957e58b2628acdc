/** ECG objects of DICOM (PS3.3 C.10.9). */
package dev.isoline.ecg.dicom;

/**
 * WFDB records and MIT annotation files (header(5), signal(5), annot(5) of the WFDB Applications
 * Guide).
 */
package dev.isoline.ecg.wfdb;

/** EDF, EDF+ and BDF (Kemp et al. 1992; Kemp and Olivan 2003). */
package dev.isoline.ecg.edf;

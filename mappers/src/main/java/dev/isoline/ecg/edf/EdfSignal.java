package dev.isoline.ecg.edf;

import dev.isoline.ecg.Lead;
import dev.isoline.ecg.Microvolts;

/**
 * One signal as the EDF header describes it (EDF, Kemp et al. 1992; EDF+, Kemp and Olivan 2003).
 *
 * @param label such as {@code ECG V1}
 * @param dimension unit of the physical values; blank when uncalibrated
 * @param prefiltering such as {@code HP:0.1Hz LP:75Hz}
 * @param samples per data record
 * @param offset samples of other signals before it in the data record
 */
record EdfSignal(
        String label,
        String dimension,
        double physicalMinimum,
        double physicalMaximum,
        int digitalMinimum,
        int digitalMaximum,
        String prefiltering,
        int samples,
        int offset) {

    boolean isVoltage() {
        return Microvolts.per(dimension).isPresent();
    }

    /** Physical value = (digital - digital minimum) x gain + physical minimum. */
    Lead lead(String name) {
        double unit = Microvolts.per(dimension).orElse(0);
        double gain =
                (physicalMaximum - physicalMinimum)
                        / ((double) digitalMaximum - digitalMinimum)
                        * unit;
        double baseline = physicalMinimum * unit - digitalMinimum * gain;
        return new Lead(
                name, gain, gain == 0 ? 0 : baseline, bits(), EdfPrefiltering.filter(prefiltering));
    }

    private int bits() {
        int widest = Math.max(digitalMaximum, -(digitalMinimum + 1));
        return Math.max(2, 33 - Integer.numberOfLeadingZeros(Math.max(widest, 1)));
    }
}

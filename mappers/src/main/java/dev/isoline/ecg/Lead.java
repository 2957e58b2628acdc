package dev.isoline.ecg;

/**
 * One lead of a recording and how its samples become a voltage: {@code sample x sensitivity +
 * baseline}, in microvolts.
 *
 * @param label name as the recording gives it, such as {@code MLII}
 * @param sensitivity microvolts of one unit of the sample; 0 when the recording is not calibrated
 * @param baseline microvolts of sample value 0
 * @param bitsStored significant bits of a sample, sign included
 */
public record Lead(String label, double sensitivity, double baseline, int bitsStored) {

    public double microvolts(int sample) {
        return sample * sensitivity + baseline;
    }

    public boolean calibrated() {
        return sensitivity != 0;
    }
}

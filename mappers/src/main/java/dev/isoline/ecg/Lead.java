package dev.isoline.ecg;

/**
 * One lead of a recording and how its samples become a voltage: {@code sample x sensitivity +
 * baseline}, in microvolts.
 *
 * @param label name as the recording gives it, such as {@code MLII}
 * @param sensitivity microvolts of one unit of the sample; 0 when the recording is not calibrated
 * @param baseline microvolts of sample value 0
 * @param bitsStored significant bits of a sample, sign included
 * @param filter what it was filtered with
 */
public record Lead(
        String label, double sensitivity, double baseline, int bitsStored, Filter filter) {

    /** A lead whose recording does not name its filters. */
    public Lead(String label, double sensitivity, double baseline, int bitsStored) {
        this(label, sensitivity, baseline, bitsStored, Filter.UNKNOWN);
    }

    public double microvolts(int sample) {
        return sample * sensitivity + baseline;
    }

    public boolean calibrated() {
        return sensitivity != 0;
    }
}

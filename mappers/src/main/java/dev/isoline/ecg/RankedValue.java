package dev.isoline.ecg;

/**
 * What stands at a place among sorted numbers, without sorting all (FIND: Hoare, CACM 1961;4:321).
 */
public final class RankedValue {

    private RankedValue() {}

    /** The {@linkplain #of ranked value} at {@code count / 2}. */
    public static double middle(double[] values, int count) {
        return of(values, count, count / 2);
    }

    /**
     * The value that would stand at {@code rank}, from 0 on, if the first {@code count} values, one
     * at least and all of them numbers, were sorted; changes their order.
     */
    public static double of(double[] values, int count, int rank) {
        int from = 0;
        int to = count - 1;
        while (from < to) {
            double pivot = values[rank];
            int low = from;
            int high = to;
            while (low <= high) {
                while (values[low] < pivot) {
                    low++;
                }
                while (values[high] > pivot) {
                    high--;
                }
                if (low <= high) {
                    double swapped = values[low];
                    values[low++] = values[high];
                    values[high--] = swapped;
                }
            }
            from = high < rank ? low : from;
            to = low > rank ? high : to;
        }
        return values[rank];
    }
}

package dev.isoline.ecg;

/** The middle of some numbers without sorting all of them (FIND: Hoare, CACM 1961;4:321). */
public final class MiddleValue {

    private MiddleValue() {}

    /**
     * The value that would stand at {@code count / 2} if the first {@code count} values, one at
     * least and all of them numbers, were sorted; changes their order.
     */
    public static double of(double[] values, int count) {
        int middle = count / 2;
        int from = 0;
        int to = count - 1;
        while (from < to) {
            double pivot = values[middle];
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
            from = high < middle ? low : from;
            to = low > middle ? high : to;
        }
        return values[middle];
    }
}

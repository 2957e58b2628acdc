package dev.isoline.ecg.summary;

import java.time.Duration;

/**
 * Time-domain heart rate variability over normal-to-normal (NN) intervals (Task Force ESC/NASPE,
 * Eur Heart J 1996;17:354-381, table 1).
 *
 * @param intervals number of NN intervals
 * @param analysed their sum
 * @param sdnn standard deviation of them, ms, n - 1
 * @param sdann standard deviation of their means over 5-minute segments, ms, n - 1
 * @param sdnnIndex mean of their standard deviations in 5-minute segments, ms
 * @param rmssd root mean square of successive differences, ms
 * @param pnn50 share of successive differences over 50 ms, percent
 * @param triangularIndex number of them over the height of their histogram, bins of 1/128 s
 */
public record Variability(
        long intervals,
        Duration analysed,
        Measure sdnn,
        Measure sdann,
        Measure sdnnIndex,
        Measure rmssd,
        Measure pnn50,
        Measure triangularIndex) {}

package dev.isoline.ecg.edf;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Times of an EDF+ file as samples, in decimals: exact however long the recording is.
 *
 * @param perRecord samples of a lead in a data record
 * @param recordSeconds duration of a data record
 * @param first time of the first data record, where the time axis begins
 */
record EdfClock(BigDecimal perRecord, BigDecimal recordSeconds, BigDecimal first) {

    /** The sample nearest to a time of the file. */
    long position(BigDecimal onset) {
        return samples(onset.subtract(first));
    }

    /** The number of samples nearest to so many seconds. */
    long samples(BigDecimal seconds) {
        return seconds.multiply(perRecord)
                .divide(recordSeconds, 0, RoundingMode.HALF_UP)
                .longValue();
    }

    double hz() {
        return perRecord.divide(recordSeconds, MathContext.DECIMAL64).doubleValue();
    }
}

package dev.isoline.ecgdicom.annotation;

import dev.isoline.ecgdicom.OrderContext.Code;

/**
 * Measurements and their units as codes: of PS3.16 where it has one (LOINC, MDC of CID 3228, SNOMED
 * CT), else of our own scheme {@code 99ISOLINE} with the codes the FHIR report has as well.
 */
final class MeasurementCode {

    // spotless:off
    static final Code HEART_RATE  = new Code("8867-4",    "LN",        "Heart rate");
    static final Code RR_INTERVAL = new Code("2:16168",   "MDC",       "RR interval global");
    static final Code SDNN        = new Code("sdnn",      "99ISOLINE", "Standard deviation of NN intervals");
    static final Code SDANN       = new Code("sdann",     "99ISOLINE", "Standard deviation of 5-minute means of NN intervals");
    static final Code SDNN_INDEX  = new Code("sdnn-index", "99ISOLINE", "Mean of 5-minute standard deviations of NN intervals");
    static final Code TRIANGULAR_INDEX = new Code("triangular-index", "99ISOLINE", "Triangular index of NN intervals");
    static final Code AF_BURDEN   = new Code("af-burden", "99ISOLINE", "Atrial fibrillation, share of the analysable time");
    static final Code RMSSD       = new Code("rmssd",     "99ISOLINE", "Root mean square of successive NN interval differences");
    static final Code PNN50       = new Code("pnn50",     "99ISOLINE", "Share of successive NN interval differences over 50 ms");

    static final Code MEAN        = new Code("373098007", "SCT",       "Mean");
    static final Code MINIMUM     = new Code("255605001", "SCT",       "Minimum");
    static final Code MAXIMUM     = new Code("56851009",  "SCT",       "Maximum");

    static final Code PER_MINUTE  = new Code("/min",      "UCUM",      "/min");
    static final Code MILLISECOND = new Code("ms",        "UCUM",      "millisecond");
    static final Code NO_UNITS    = new Code("1",         "UCUM",      "no units");
    static final Code PERCENT     = new Code("%",         "UCUM",      "Percent");
    // spotless:on

    private MeasurementCode() {}
}

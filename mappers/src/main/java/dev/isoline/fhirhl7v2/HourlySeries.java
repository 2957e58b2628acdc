package dev.isoline.fhirhl7v2;

import ca.uhn.hl7v2.model.DataTypeException;
import ca.uhn.hl7v2.model.v251.segment.OBX;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.SampledData;

/**
 * SampledData of one value an hour (FHIR R4 datatypes.html#SampledData) as a row for each hour;
 * samples that come faster are a waveform, which is no result.
 */
final class HourlySeries {

    private static final BigDecimal HOUR = BigDecimal.valueOf(3_600_000);
    private static final DateTimeFormatter WITH_OFFSET =
            DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSSxxx");

    private final SampledData series;
    private final String[] values;

    private HourlySeries(SampledData series) {
        this.series = series;
        this.values = series.getData().split(" ");
    }

    static boolean is(Object value) {
        return value instanceof SampledData series
                && series.hasPeriod()
                && HOUR.compareTo(series.getPeriod()) == 0
                && series.getDimensions() == 1
                && series.hasData();
    }

    static HourlySeries of(Object value) {
        return new HourlySeries((SampledData) value);
    }

    int hours() {
        return values.length;
    }

    /** E, U and L stand for values that are not there. */
    boolean has(int hour) {
        return Character.isDigit(values[hour].charAt(values[hour].length() - 1));
    }

    /** OBX-2, OBX-5 and OBX-6 of an hour. */
    void value(int hour, OBX obx) throws DataTypeException {
        BigDecimal factor = series.hasFactor() ? series.getFactor() : BigDecimal.ONE;
        Quantity origin = series.getOrigin();
        var value = new BigDecimal(values[hour]).multiply(factor).add(origin.getValue());
        ObxValue.map(origin.copy().setValue(value), obx);
    }

    /** OBX-14: when the hour began, with the offset the series began with. */
    void time(int hour, Observation from, OBX obx) throws DataTypeException {
        if (from.hasEffectivePeriod() && from.getEffectivePeriod().hasStart()) {
            String start = from.getEffectivePeriod().getStartElement().getValueAsString();
            var begins = OffsetDateTime.parse(start).plus(Duration.ofHours(hour));
            DateTimeToTs.map(
                    new DateTimeType(WITH_OFFSET.format(begins)),
                    obx.getObx14_DateTimeOfTheObservation());
        }
    }
}

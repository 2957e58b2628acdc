package dev.isoline.ecgfhir;

import static dev.isoline.ecgfhir.AmbulatoryEcgMetric.*;
import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.HeartRates.Interval;
import dev.isoline.ecg.summary.MadeSummary;
import dev.isoline.ecg.summary.Summary;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationComponentComponent;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.SampledData;
import org.junit.jupiter.api.Test;

class SummaryToObservationsTest {

    @Test
    void heart_rate_is_told_in_whole_beats_per_minute() {
        assertThat(value(SampleReport.CLASSIFIED, RATE_MEAN)).isEqualTo("72 /min");
        assertThat(value(SampleReport.CLASSIFIED, RATE_MIN)).isEqualTo("48 /min");
        assertThat(value(SampleReport.CLASSIFIED, RATE_MAX)).isEqualTo("132 /min");
    }

    /** Summer time ended in Lisbon 2026-10-25 at 02:00 (IANA tz, rule EU). */
    @Test
    void a_time_after_the_end_of_summer_time_has_the_winter_offset() {
        assertThat(time(RATE_MAX_TIME)).isEqualTo("2026-10-25T00:50:00.000+01:00");
        assertThat(time(RATE_MIN_TIME)).isEqualTo("2026-10-25T01:10:00.000+00:00");
    }

    @Test
    void beats_nobody_classified_are_not_performed() {
        for (AmbulatoryEcgMetric metric : List.of(VE_COUNT, VE_PER_HOUR, VE_SHARE, SVE_COUNT)) {
            assertThat(component(SampleReport.BARE, metric).hasValue()).isFalse();
            assertThat(absent(SampleReport.BARE, metric)).isEqualTo("not-performed");
        }
    }

    @Test
    void no_ectopic_beat_among_classified_ones_is_zero() {
        assertThat(value(SampleReport.CLASSIFIED, SVE_COUNT)).isEqualTo("0 {beats}");
        assertThat(value(SampleReport.CLASSIFIED, SVE_PER_HOUR)).isEqualTo("0.0 /h");
    }

    /** 240 beats in 2 h of analysable time, of 10 240 beats. */
    @Test
    void ectopic_beats_are_told_per_analysable_hour_and_as_a_share() {
        assertThat(value(SampleReport.CLASSIFIED, VE_PER_HOUR)).isEqualTo("120.0 /h");
        assertThat(value(SampleReport.CLASSIFIED, VE_SHARE)).isEqualTo("2.34 %");
    }

    @Test
    void no_rate_and_no_variability_are_unknown() {
        assertThat(absent(SampleReport.BARE, RATE_MEAN)).isEqualTo("unknown");
        assertThat(absent(SampleReport.BARE, SDNN)).isEqualTo("unknown");
    }

    /** LOINC codes and why both: 76643-6 by EKG, 112429-6 names the algorithm. */
    @Test
    void sdnn_carries_both_loinc_codes_before_our_own() {
        assertThat(component(SampleReport.CLASSIFIED, SDNN).getCode().getCoding())
                .extracting(c -> c.getCode())
                .containsExactly("76643-6", "112429-6", "sdnn");
        assertThat(value(SampleReport.CLASSIFIED, SDNN)).isEqualTo("131.3 ms");
    }

    /** FHIR R4 datatypes.html#SampledData: one space between values, E where there is none. */
    @Test
    void an_hour_without_a_rate_is_an_e_in_its_series() {
        var series = (SampledData) component(SampleReport.CLASSIFIED, HOURLY_RATE_MEAN).getValue();

        assertThat(series.getData()).isEqualTo("72 72 E");
        assertThat(series.getPeriod()).isEqualByComparingTo("3600000");
        assertThat(
                        ((SampledData) component(SampleReport.CLASSIFIED, HOURLY_BEATS).getValue())
                                .getData())
                .isEqualTo("5000 5240 0");
    }

    @Test
    void each_pause_is_an_observation_with_its_own_period() {
        List<Observation> pauses = pauses(SampleReport.CLASSIFIED);

        assertThat(pauses).hasSize(2);
        var period = (Period) pauses.get(0).getEffective();
        assertThat(period.getStartElement().getValueAsString())
                .isEqualTo("2026-10-25T01:15:00.000+01:00");
        assertThat(period.getEndElement().getValueAsString())
                .isEqualTo("2026-10-25T01:15:02.100+01:00");
        assertThat(pauses.get(1).getValueQuantity().getValue()).isEqualByComparingTo("2840");
        assertThat(panel(SampleReport.CLASSIFIED, PAUSE_PANEL).getHasMember()).hasSize(2);
    }

    @Test
    void a_recording_without_a_start_has_no_times() {
        assertThat(panel(SampleReport.BARE, RATE_PANEL).hasEffective()).isFalse();
        assertThat(pauses(SampleReport.BARE).get(0).getNoteFirstRep().getText())
                .isEqualTo("2700 s after the start of the recording.");
    }

    @Test
    void only_the_longest_pauses_are_listed_and_all_are_counted() {
        List<Interval> many =
                IntStream.range(0, 150)
                        .mapToObj(
                                i ->
                                        new Interval(
                                                Duration.ofSeconds(i * 10L),
                                                Duration.ofMillis(2000 + i)))
                        .toList();
        Summary summary =
                SampleReport.summary(
                        Optional.of(SampleReport.START),
                        Map.of(Beat.Kind.N, 10_240L),
                        Optional.of(SampleReport.RATE),
                        many,
                        MadeSummary.TOO_SHORT);

        assertThat(value(summary, PAUSE_COUNT)).isEqualTo("150 {count}");
        assertThat(pauses(summary)).hasSize(SummaryToObservations.MOST_PAUSES);
        assertThat(pauses(summary).get(0).getValueQuantity().getValue())
                .isEqualByComparingTo("2050");
        assertThat(panel(summary, PAUSE_PANEL).getNoteFirstRep().getText()).contains("100 longest");
    }

    /** Observation invariant obs-7 of FHIR R4: a component does not repeat the panel's code. */
    @Test
    void no_component_has_the_code_of_its_panel() {
        assertThat(map(SampleReport.CLASSIFIED))
                .allSatisfy(
                        o ->
                                assertThat(o.getComponent())
                                        .noneMatch(c -> own(c.getCode()).equals(own(o.getCode()))));
    }

    @Test
    void ids_are_the_same_each_time_and_differ_from_each_other() {
        assertThat(map(SampleReport.CLASSIFIED))
                .extracting(Observation::getIdPart)
                .doesNotHaveDuplicates()
                .isEqualTo(
                        map(SampleReport.CLASSIFIED).stream().map(Observation::getIdPart).toList());
    }

    private static List<Observation> map(Summary summary) {
        return SummaryToObservations.map(
                summary, SampleReport.context(), summary.coverage().recorded());
    }

    private static Observation panel(Summary summary, AmbulatoryEcgMetric metric) {
        return map(summary).stream()
                .filter(o -> own(o.getCode()).equals(metric.code()))
                .findFirst()
                .orElseThrow();
    }

    private static List<Observation> pauses(Summary summary) {
        return map(summary).stream().filter(o -> own(o.getCode()).equals("pause")).toList();
    }

    private static ObservationComponentComponent component(
            Summary summary, AmbulatoryEcgMetric metric) {
        return map(summary).stream()
                .flatMap(o -> o.getComponent().stream())
                .filter(c -> own(c.getCode()).equals(metric.code()))
                .findFirst()
                .orElseThrow();
    }

    private static String value(Summary summary, AmbulatoryEcgMetric metric) {
        var quantity = component(summary, metric).getValueQuantity();
        return quantity.getValue().toPlainString() + " " + quantity.getCode();
    }

    private static String time(AmbulatoryEcgMetric metric) {
        return component(SampleReport.CLASSIFIED, metric).getValueDateTimeType().getValueAsString();
    }

    private static String absent(Summary summary, AmbulatoryEcgMetric metric) {
        return component(summary, metric).getDataAbsentReason().getCodingFirstRep().getCode();
    }

    private static String own(CodeableConcept code) {
        return code.getCoding().get(code.getCoding().size() - 1).getCode();
    }
}

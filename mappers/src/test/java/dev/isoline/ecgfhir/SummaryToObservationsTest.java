package dev.isoline.ecgfhir;

import static dev.isoline.ecgfhir.AmbulatoryEcgMetric.*;
import static dev.isoline.ecgfhir.EctopyMetric.Origin.SUPRAVENTRICULAR;
import static dev.isoline.ecgfhir.EctopyMetric.Origin.VENTRICULAR;
import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.HeartRates.Interval;
import dev.isoline.ecg.summary.MadeSummary;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecgfhir.EctopyMetric.Aspect;
import dev.isoline.fhir.Systems;
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

    private static final Metric VE_COUNT = new EctopyMetric(VENTRICULAR, Aspect.COUNT);
    private static final Metric VE_PER_HOUR = new EctopyMetric(VENTRICULAR, Aspect.PER_HOUR);
    private static final Metric VE_SHARE = new EctopyMetric(VENTRICULAR, Aspect.SHARE);
    private static final Metric SVE_COUNT = new EctopyMetric(SUPRAVENTRICULAR, Aspect.COUNT);
    private static final Metric SVE_PER_HOUR = new EctopyMetric(SUPRAVENTRICULAR, Aspect.PER_HOUR);

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
        for (Metric metric : List.of(VE_COUNT, VE_PER_HOUR, VE_SHARE, SVE_COUNT)) {
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
        assertThat(pauses(summary)).hasSize(EpisodeObservations.MOST);
        assertThat(pauses(summary).get(0).getValueQuantity().getValue())
                .isEqualByComparingTo("2100");
        assertThat(panel(summary, PAUSE_PANEL).getNoteFirstRep().getText())
                .isEqualTo(
                        "Only 50 episodes are listed, the fastest and the longest; 100 more are"
                                + " counted.");
    }

    @Test
    void an_episode_says_when_how_long_how_many_beats_and_how_fast() {
        var episode =
                map(SampleReport.CLASSIFIED).stream()
                        .filter(o -> own(o.getCode()).equals("rhythm-episode"))
                        .filter(o -> code(o).equals("atrial-fibrillation"))
                        .findFirst()
                        .orElseThrow();

        assertThat(((Period) episode.getEffective()).getStartElement().getValueAsString())
                .isEqualTo("2026-10-25T01:30:00.000+01:00");
        assertThat(((Period) episode.getEffective()).getEndElement().getValueAsString())
                .isEqualTo("2026-10-25T01:40:00.000+01:00");
        assertThat(episode.getComponent())
                .extracting(c -> own(c.getCode()) + " " + c.getValueQuantity().getValue())
                .containsExactly(
                        "rhythm-episode-duration 600.00",
                        "rhythm-episode-beats 1200",
                        "rhythm-episode-rate-mean 120",
                        "rhythm-episode-rate-min 78",
                        "rhythm-episode-rate-max 163");
        assertThat(panel(SampleReport.CLASSIFIED, of(EpisodeKind.ATRIAL_FIBRILLATION)))
                .satisfies(p -> assertThat(p.getHasMember()).hasSize(1));
    }

    /**
     * SNOMED CT 49436004 in CID 3230, MDC 10:9472 in CID 3415 (PS3.16); 10 * 65536 + 9472 = 664832
     * is the code of the same term in IEEE 11073-10101 (partition 10).
     */
    @Test
    void a_kind_of_episode_has_its_standard_codes_before_our_own() {
        assertThat(EpisodeConcept.of(EpisodeKind.ATRIAL_FIBRILLATION).getCoding())
                .extracting(c -> c.getSystem() + " " + c.getCode())
                .containsExactly(
                        "http://snomed.info/sct 49436004",
                        "urn:iso:std:iso:11073:10101 664832",
                        Systems.METRIC + " atrial-fibrillation");
    }

    /** 600 s of 7200 s. */
    @Test
    void the_burden_is_the_share_of_the_analysable_time() {
        var burden =
                new EpisodeMetric(EpisodeKind.ATRIAL_FIBRILLATION, EpisodeMetric.Aspect.BURDEN);
        assertThat(value(SampleReport.CLASSIFIED, burden)).isEqualTo("8.33 %");
    }

    @Test
    void a_kind_that_was_not_looked_for_is_not_performed_and_says_why() {
        var episodes =
                new EpisodeMetric(EpisodeKind.VENTRICULAR_COUPLET, EpisodeMetric.Aspect.EPISODES);

        assertThat(absent(SampleReport.BARE, episodes)).isEqualTo("not-performed");
        assertThat(component(SampleReport.BARE, episodes).getDataAbsentReason().getText())
                .isEqualTo("Nobody classified the beats.");
        assertThat(value(SampleReport.CLASSIFIED, episodes)).isEqualTo("0 {count}");
    }

    @Test
    void a_refused_measure_carries_the_reason() {
        assertThat(absent(SampleReport.CLASSIFIED, SDANN)).isEqualTo("unknown");
        assertThat(component(SampleReport.CLASSIFIED, SDANN).getDataAbsentReason().getText())
                .isEqualTo("Too short.");
    }

    @Test
    void the_longest_and_the_fastest_run_are_told_beside_the_count() {
        assertThat(value(SampleReport.CLASSIFIED, new EctopyMetric(VENTRICULAR, Aspect.RUNS)))
                .isEqualTo("3 {count}");
        assertThat(
                        value(
                                SampleReport.CLASSIFIED,
                                new EctopyMetric(VENTRICULAR, Aspect.LONGEST_BEATS)))
                .isEqualTo("6 {beats}");
        assertThat(
                        value(
                                SampleReport.CLASSIFIED,
                                new EctopyMetric(VENTRICULAR, Aspect.FASTEST_RATE)))
                .isEqualTo("126 /min");
    }

    @Test
    void each_lead_has_a_panel_of_its_own() {
        assertThat(value(SampleReport.BARE, LEAD_USABLE)).isEqualTo("120.5 min");
        assertThat(value(SampleReport.BARE, LEAD_USABLE_SHARE)).isEqualTo("80.3 %");
        assertThat(value(SampleReport.BARE, LEAD_OFF)).isEqualTo("1.5 min");
        assertThat(value(SampleReport.BARE, LEAD_SATURATED)).isEqualTo("0.0 min");
        assertThat(value(SampleReport.BARE, LEAD_AMPLITUDE)).isEqualTo("1150 uV");
        assertThat(panel(SampleReport.BARE, QUALITY_PANEL).getHasMember()).hasSize(1);
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

    private static Observation panel(Summary summary, Metric metric) {
        return map(summary).stream()
                .filter(o -> own(o.getCode()).equals(metric.code()))
                .findFirst()
                .orElseThrow();
    }

    private static Metric of(EpisodeKind kind) {
        return new EpisodeMetric(kind, EpisodeMetric.Aspect.PANEL);
    }

    private static String code(Observation episode) {
        return own(episode.getValueCodeableConcept());
    }

    private static List<Observation> pauses(Summary summary) {
        return map(summary).stream().filter(o -> own(o.getCode()).equals("pause")).toList();
    }

    private static ObservationComponentComponent component(Summary summary, Metric metric) {
        return map(summary).stream()
                .flatMap(o -> o.getComponent().stream())
                .filter(c -> own(c.getCode()).equals(metric.code()))
                .findFirst()
                .orElseThrow();
    }

    private static String value(Summary summary, Metric metric) {
        var quantity = component(summary, metric).getValueQuantity();
        return quantity.getValue().toPlainString() + " " + quantity.getCode();
    }

    private static String time(Metric metric) {
        return component(SampleReport.CLASSIFIED, metric).getValueDateTimeType().getValueAsString();
    }

    private static String absent(Summary summary, Metric metric) {
        return component(summary, metric).getDataAbsentReason().getCodingFirstRep().getCode();
    }

    private static String own(CodeableConcept code) {
        return code.getCoding().get(code.getCoding().size() - 1).getCode();
    }
}

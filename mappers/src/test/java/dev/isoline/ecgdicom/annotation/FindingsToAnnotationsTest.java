package dev.isoline.ecgdicom.annotation;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.DiaryEntry;
import dev.isoline.ecg.Rhythm;
import dev.isoline.ecg.RhythmEpisode;
import dev.isoline.ecg.Stretch;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.HeartRates;
import dev.isoline.ecg.summary.MadeSummary;
import dev.isoline.ecgdicom.Checkers;
import dev.isoline.ecgdicom.MadeFindings;
import dev.isoline.ecgdicom.OrderContext.Code;
import dev.isoline.ecgdicom.annotation.WaveformAnnotation.Measurement;
import dev.isoline.ecgdicom.annotation.WaveformAnnotation.Range;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** PS3.3 C.10.10: what is known of some samples, counted from the first of them as 1. */
class FindingsToAnnotationsTest {

    private static final Stretch OBJECT = new Stretch(1_000, 3_000);

    private final MadeFindings made = new MadeFindings().recorded(0, 10_000);

    private List<WaveformAnnotation> annotations(Stretch object) {
        return new FindingsToAnnotations(made.build()).of(object);
    }

    private List<WaveformAnnotation> of(String code) {
        return annotations(OBJECT).stream().filter(a -> a.concept().value().equals(code)).toList();
    }

    @Test
    void beats_are_one_item_a_class_with_the_first_sample_as_1() {
        made.beat(999, Beat.Kind.N).beat(1_000, Beat.Kind.N).beat(1_500, Beat.Kind.V);
        made.beat(2_000, Beat.Kind.N).beat(2_999, Beat.Kind.V).beat(3_000, Beat.Kind.N);
        assertThat(of("10:8208")).hasSize(1);
        assertThat(of("10:8208").get(0).range()).contains(Range.MULTIPOINT);
        assertThat(of("10:8208").get(0).positions()).containsExactly(1, 1_001);
        assertThat(of("10:8336").get(0).positions()).containsExactly(501, 2_000);
    }

    @Test
    void a_class_with_one_beat_is_a_point_and_an_unclassified_beat_is_an_r_wave() {
        made.classified = false;
        made.beat(1_200, Beat.Kind.UNCLASSIFIED);
        assertThat(of("10:576").get(0).range()).contains(Range.POINT);
        assertThat(annotations(OBJECT).get(0).text())
                .contains("computed by a program")
                .contains("preliminary")
                .contains("Nobody classified");
        assertThat(annotations(OBJECT)).allMatch(a -> a.group() == WaveformAnnotation.COMPUTED);
    }

    /** PS3.3 C.10.10: Annotation Group Number ties what belongs together. */
    @Test
    void what_the_recording_brings_and_what_was_computed_are_two_groups() {
        made.beat(1_200, Beat.Kind.N);
        made.rhythms.add(new RhythmEpisode(new Stretch(500, 1_500), Rhythm.ATRIAL_FIBRILLATION));
        made.episodes.add(episode(EpisodeKind.ATRIAL_FIBRILLATION, 1_100, 2_100));
        assertThat(of("10:9472")).extracting(WaveformAnnotation::group).containsExactly(1, 2);
        assertThat(of("10:8208")).extracting(WaveformAnnotation::group).containsExactly(1);
        assertThat(annotations(OBJECT))
                .filteredOn(WaveformAnnotation::isText)
                .extracting(WaveformAnnotation::group)
                .containsExactly(1, 2);
    }

    @Test
    void an_episode_the_program_found_is_a_segment_from_first_to_last_beat() {
        made.episodes.add(episode(EpisodeKind.VENTRICULAR_COUPLET, 1_100, 1_200));
        made.episodes.add(episode(EpisodeKind.VENTRICULAR_TRIPLET, 2_900, 3_100));
        made.episodes.add(episode(EpisodeKind.BRADYCARDIA, 5_000, 9_000));
        assertThat(of("10:9952").get(0).positions()).containsExactly(101, 201);
        assertThat(of("v-triplet").get(0).positions()).containsExactly(1_901, 2_000);
        assertThat(of("v-triplet").get(0).concept().scheme()).isEqualTo("99ISOLINE");
        assertThat(of("10:10432")).isEmpty();
    }

    private Episode episode(EpisodeKind kind, long from, long to) {
        return new Episode(kind, made.time(from), made.time(to - from), 5, Optional.empty());
    }

    /** PS3.5 table 6.2-1: Code Value is SH, 16 characters; Code Meaning LO, 64. */
    @Test
    void every_kind_of_episode_but_the_pause_has_a_code_that_fits() {
        for (var kind : EpisodeKind.values()) {
            assertThat(EpisodeCode.of(kind).isPresent()).isEqualTo(kind != EpisodeKind.PAUSE);
            EpisodeCode.of(kind)
                    .ifPresent(
                            code -> {
                                assertThat(code.value()).hasSizeLessThanOrEqualTo(16);
                                assertThat(code.meaning()).hasSizeLessThanOrEqualTo(64);
                            });
        }
    }

    /** PS3.5 7.1.2: a UL value of at most 65534 bytes, four for each position. */
    @Test
    void more_beats_than_one_element_holds_are_several_items() {
        for (int i = 0; i < 40_000; i++) {
            made.beat(i, Beat.Kind.N);
        }
        var items =
                annotations(new Stretch(0, 40_000)).stream()
                        .filter(a -> a.concept().value().equals("10:8208"))
                        .toList();
        assertThat(items)
                .extracting(a -> a.positions().length)
                .containsExactly(16_383, 16_383, 7_234);
        assertThat(items.stream().flatMapToLong(a -> Arrays.stream(a.positions())).toArray())
                .isSorted()
                .doesNotHaveDuplicates()
                .hasSize(40_000);
    }

    @Test
    void rhythms_are_segments_cut_at_the_edges_of_the_object() {
        made.rhythms.add(new RhythmEpisode(new Stretch(500, 1_500), Rhythm.ATRIAL_FIBRILLATION));
        made.rhythms.add(new RhythmEpisode(new Stretch(3_000, 4_000), Rhythm.SINUS));
        assertThat(of("10:9472").get(0).range()).contains(Range.SEGMENT);
        assertThat(of("10:9472").get(0).positions()).containsExactly(1, 500);
        assertThat(of("10:9216")).isEmpty();
    }

    @Test
    void stretches_without_a_signal_are_pairs() {
        made.silent.add(new Stretch(1_200, 1_400));
        made.silent.add(new Stretch(2_800, 3_200));
        assertThat(of("10:11248").get(0).range()).contains(Range.MULTISEGMENT);
        assertThat(of("10:11248").get(0).positions()).containsExactly(201, 400, 1_801, 2_000);
    }

    @Test
    void diary_entries_are_points_or_segments_of_text() {
        made.diary.add(new DiaryEntry(1_100, 0, "palpitations"));
        made.diary.add(new DiaryEntry(2_000, 400, "climbing\nstairs"));
        made.diary.add(new DiaryEntry(5_000, 0, "another day"));
        var texts =
                annotations(OBJECT).stream().filter(WaveformAnnotation::isText).skip(2).toList();
        assertThat(texts)
                .extracting(WaveformAnnotation::text)
                .containsExactly("palpitations", "climbing stairs");
        assertThat(texts.get(0).positions()).containsExactly(101);
        assertThat(texts.get(1).positions()).containsExactly(1_001, 1_400);
    }

    @Test
    void a_pause_is_an_rr_interval_from_beat_to_beat() {
        made.pauses.add(made.interval(1_500, 2_020));
        made.longestRr = Optional.of(made.interval(1_500, 2_020));
        assertThat(of("2:16168")).hasSize(1);
        assertThat(of("2:16168").get(0).positions()).containsExactly(501, 1_021);
        assertThat(of("2:16168").get(0).measurement())
                .contains(new Measurement(2600, new Code("ms", "UCUM", "millisecond")));
    }

    @Test
    void rates_stand_where_they_were_measured_and_means_only_in_the_whole_recording() {
        for (int i = 0; i < 50; i++) {
            made.beat(200L * i, Beat.Kind.N);
        }
        made.rate =
                Optional.of(
                        new HeartRates.Rate(61.234, 55, made.time(1_200), 70, made.time(8_000)));
        made.variability = MadeSummary.variability(49, 12.3456, 10, 1);
        assertThat(of("8867-4")).hasSize(1);
        assertThat(of("8867-4").get(0).positions()).containsExactly(201, 1_801);
        assertThat(of("8867-4").get(0).modifier()).map(Code::meaning).contains("Minimum");
        var whole = annotations(new Stretch(0, 10_000));
        assertThat(whole)
                .filteredOn(a -> a.concept().value().equals("sdnn"))
                .singleElement()
                .satisfies(a -> assertThat(a.measurement()).map(Measurement::value).contains(12.35))
                .satisfies(a -> assertThat(a.range()).isEmpty());
        assertThat(whole)
                .filteredOn(a -> a.modifier().map(Code::meaning).equals(Optional.of("Mean")))
                .hasSize(1);
    }

    /** PS3.16 as pydicom has it; SNOMED CT and UCUM are checked against its lists as well. */
    @Test
    void every_code_is_one_of_its_context_group() throws Exception {
        var rows = new StringBuilder();
        Stream.of(Beat.Kind.values()).map(BeatCode::of).forEach(c -> row(rows, c, 3335));
        row(rows, BeatCode.NO_SIGNAL, 3335);
        Stream.of(Rhythm.values())
                .flatMap(rhythm -> RhythmCode.of(rhythm).stream())
                .forEach(c -> row(rows, c, 3415));
        Stream.of(EpisodeKind.values())
                .flatMap(kind -> EpisodeCode.of(kind).stream())
                .filter(code -> code.scheme().equals("MDC"))
                .forEach(code -> row(rows, code, 3415));
        row(rows, MeasurementCode.NO_UNITS, 7181);
        row(rows, MeasurementCode.RR_INTERVAL, 3228);
        row(rows, MeasurementCode.HEART_RATE, 12216);
        row(rows, MeasurementCode.MEAN, 3627);
        row(rows, MeasurementCode.MINIMUM, 3488);
        row(rows, MeasurementCode.MAXIMUM, 3488);
        row(rows, MeasurementCode.MILLISECOND, 0);
        row(rows, MeasurementCode.PER_MINUTE, 0);
        row(rows, MeasurementCode.PERCENT, 0);
        String script =
                """
                from pydicom.sr._concepts_dict import concepts
                def known(scheme, value, meaning, cid):
                    return any(value in entry and entry[value][0] == meaning
                               and (cid == 0 or cid in entry[value][1])
                               for entry in concepts[scheme].values())
                print([row for row in [%s] if not known(*row)])
                """;
        assertThat(Checkers.python(script.formatted(rows))).isEqualTo("[]");
    }

    private static void row(StringBuilder rows, Code code, int cid) {
        rows.append(
                "('%s', '%s', '%s', %d),"
                        .formatted(code.scheme(), code.value(), code.meaning(), cid));
    }
}

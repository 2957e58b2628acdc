package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.Threshold;
import java.time.Duration;

/** The two classes of ectopic beats, and what their groups are called. */
enum EctopicClass {
    VENTRICULAR(
            Beat.Kind.V,
            EpisodeKind.VENTRICULAR_COUPLET,
            EpisodeKind.VENTRICULAR_TRIPLET,
            EpisodeKind.VENTRICULAR_BIGEMINY,
            EpisodeKind.VENTRICULAR_TRIGEMINY,
            EpisodeKind.SUSTAINED_VENTRICULAR_TACHYCARDIA,
            EpisodeKind.NONSUSTAINED_VENTRICULAR_TACHYCARDIA,
            EpisodeKind.ACCELERATED_IDIOVENTRICULAR_RHYTHM,
            EpisodeKind.SLOW_VENTRICULAR_RUN) {

        @Override
        EpisodeKind run(double rate, Duration duration, AnalysisSettings settings) {
            if (rate > settings.value(Threshold.VT_RATE)) {
                return duration.compareTo(settings.duration(Threshold.VT_SUSTAINED)) >= 0
                        ? EpisodeKind.SUSTAINED_VENTRICULAR_TACHYCARDIA
                        : EpisodeKind.NONSUSTAINED_VENTRICULAR_TACHYCARDIA;
            }
            return rate >= settings.value(Threshold.AIVR_RATE)
                    ? EpisodeKind.ACCELERATED_IDIOVENTRICULAR_RHYTHM
                    : EpisodeKind.SLOW_VENTRICULAR_RUN;
        }
    },

    SUPRAVENTRICULAR(
            Beat.Kind.S,
            EpisodeKind.SUPRAVENTRICULAR_COUPLET,
            EpisodeKind.SUPRAVENTRICULAR_TRIPLET,
            EpisodeKind.SUPRAVENTRICULAR_BIGEMINY,
            EpisodeKind.SUPRAVENTRICULAR_TRIGEMINY,
            EpisodeKind.SUPRAVENTRICULAR_TACHYCARDIA,
            EpisodeKind.SLOW_SUPRAVENTRICULAR_RUN) {

        @Override
        EpisodeKind run(double rate, Duration duration, AnalysisSettings settings) {
            return rate > settings.value(Threshold.SVT_RATE)
                    ? EpisodeKind.SUPRAVENTRICULAR_TACHYCARDIA
                    : EpisodeKind.SLOW_SUPRAVENTRICULAR_RUN;
        }
    };

    final Beat.Kind beat;
    final EpisodeKind couplet;
    final EpisodeKind triplet;
    final EpisodeKind bigeminy;
    final EpisodeKind trigeminy;
    private final EpisodeKind[] runs;

    EctopicClass(
            Beat.Kind beat,
            EpisodeKind couplet,
            EpisodeKind triplet,
            EpisodeKind bigeminy,
            EpisodeKind trigeminy,
            EpisodeKind... runs) {
        this.beat = beat;
        this.couplet = couplet;
        this.triplet = triplet;
        this.bigeminy = bigeminy;
        this.trigeminy = trigeminy;
        this.runs = runs;
    }

    /** Named by its mean rate and its duration. */
    abstract EpisodeKind run(double rate, Duration duration, AnalysisSettings settings);

    Episode named(Episode run, AnalysisSettings settings) {
        double rate = run.rates().orElseThrow().mean();
        return run.as(run(rate, run.duration(), settings));
    }

    void lookFor(EpisodeLog log) {
        log.lookFor(couplet, triplet, bigeminy, trigeminy);
        log.lookFor(runs);
    }
}

package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Recording;
import dev.isoline.ecg.rhythm.BeatTrack;
import dev.isoline.ecg.rhythm.BeatTrack.Origin;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Coverage;
import dev.isoline.ecg.summary.Threshold;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What a reader of the summary has to know, one sentence each. */
final class AnalysisNotes {

    private static final String LEFT_OUT =
            " heart rate variability leaves out intervals of unlikely length and those far from the"
                    + " median of the five around them.";
    private static final String UNCLASSIFIED = "Nobody classified the beats:" + LEFT_OUT;
    private static final String FOUND =
            "Beats and their classes are those the program found:" + LEFT_OUT;
    private static final String FIBRILLATION =
            "Atrial fibrillation is told from irregular intervals alone: P waves and atrial flutter"
                    + " are not looked for.";

    private final Recording recording;
    private final Detection detection;
    private final AnalysisSettings settings;

    AnalysisNotes(Recording recording, Detection detection, AnalysisSettings settings) {
        this.recording = recording;
        this.detection = detection;
        this.settings = settings;
    }

    List<String> of(BeatTrack track, Coverage coverage) {
        var notes = new ArrayList<>(recording.header().notes());
        if (detection.timeline().gaps() > 0) {
            notes.add("Gaps in the recording: " + detection.timeline().gaps() + ".");
        }
        notes.add(beats(track.origin()));
        if (track.origin() != Origin.NOBODY) {
            notes.add(FIBRILLATION);
        }
        if (coverage.analysable().compareTo(settings.duration(Threshold.HRV_DAY)) < 0) {
            notes.add(day());
        }
        return List.copyOf(notes);
    }

    private String beats(Origin origin) {
        return switch (origin) {
            case NOBODY -> UNCLASSIFIED;
            case PROGRAM -> FOUND;
            case REFERENCE ->
                    "Beats and their classes are those the recording brings; the program itself"
                            + " found "
                            + detection.beats().size()
                            + " beats.";
        };
    }

    private String day() {
        return String.format(
                Locale.ROOT,
                "Less than %.0f h are analysable: values of heart rate variability are not to be"
                        + " compared with those published for 24 h.",
                settings.value(Threshold.HRV_DAY) / 3600);
    }
}

package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.DiaryEntry;
import dev.isoline.ecg.RhythmEpisode;
import dev.isoline.ecg.Stretch;
import dev.isoline.ecg.rhythm.BeatTrack.Origin;
import dev.isoline.ecg.summary.Summary;
import java.util.List;

/**
 * What is known of a recording after it was read to its end, placed on its time axis in samples.
 *
 * @param summary the measures
 * @param beats in time order, those the summary was made from
 * @param origin who gave the beats their classes
 * @param recorded what of the time axis holds samples: one stretch for each gap-free block
 * @param silent where no lead can be used: missing, saturated or unchanging
 * @param flutter where the recording marks ventricular flutter or fibrillation
 * @param rhythms the recording brings
 * @param diary the recording brings
 */
public record Findings(
        Summary summary,
        List<Beat> beats,
        Origin origin,
        List<Stretch> recorded,
        List<Stretch> silent,
        List<Stretch> flutter,
        List<RhythmEpisode> rhythms,
        List<DiaryEntry> diary) {}

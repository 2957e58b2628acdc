package dev.isoline.ecgdicom.iod;

import dev.isoline.ecg.Block;
import dev.isoline.ecgdicom.WrittenObject;
import dev.isoline.ecgdicom.annotation.WaveformAnnotation;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Strips cut out of the blocks as they pass by; some seconds each, so they are held in memory. */
final class StripSeries {

    private final SeriesWriter series;
    private final Annotator annotator;
    private final int[] leads;
    private final List<Strip> strips;
    private final List<int[][]> samples = new ArrayList<>();

    private StripSeries(SeriesWriter series, Annotator annotator, int[] leads, List<Strip> strips) {
        this.series = series;
        this.annotator = annotator;
        this.leads = leads;
        this.strips = strips;
        for (Strip strip : strips) {
            samples.add(new int[leads.length][(int) strip.window().length()]);
        }
    }

    /**
     * 12-lead ECG objects where the recording has the twelve leads, General ECG objects where it is
     * fast enough for them, else Ambulatory ECG objects.
     */
    static StripSeries of(RecordingSource source, Annotator annotator, List<Strip> strips) {
        var leads = source.signal().leads();
        int hz = source.signal().hz();
        long longest = strips.stream().mapToLong(strip -> strip.window().length()).max().orElse(0);
        var twelve = TwelveLeads.in(leads);
        if (twelve.isPresent()
                && EcgIod.TWELVE_LEAD.takes(hz)
                && longest <= EcgIod.TWELVE_LEAD.mostSamples) {
            var kept = IntStream.of(twelve.get()).mapToObj(leads::get).toList();
            return new StripSeries(source.twelveLeads(kept), annotator, twelve.get(), strips);
        }
        var iod = EcgIod.GENERAL.takes(hz) ? EcgIod.GENERAL : EcgIod.AMBULATORY;
        int[] all = IntStream.range(0, leads.size()).toArray();
        return new StripSeries(source.strips(iod), annotator, all, strips);
    }

    void append(Block block) {
        for (int i = 0; i < strips.size(); i++) {
            var window = strips.get(i).window();
            long from = Math.max(window.from(), block.first());
            int count = (int) (Math.min(window.to(), block.end()) - from);
            for (int lead = 0; count > 0 && lead < leads.length; lead++) {
                System.arraycopy(
                        block.samples()[leads[lead]],
                        (int) (from - block.first()),
                        samples.get(i)[lead],
                        (int) (from - window.from()),
                        count);
            }
        }
    }

    List<WrittenObject> finish() throws IOException {
        var written = new ArrayList<WrittenObject>();
        for (int i = 0; i < strips.size(); i++) {
            var window = strips.get(i).window();
            try (var object = series.open(i + 1, window.from(), annotations(strips.get(i)))) {
                object.append(samples.get(i), 0, (int) window.length());
                written.add(object.complete());
            }
        }
        return written;
    }

    private List<WaveformAnnotation> annotations(Strip strip) {
        var annotations = new ArrayList<WaveformAnnotation>();
        if (!strip.reasons().isEmpty()) {
            annotations.add(
                    WaveformAnnotation.ofText(
                            "Strip for: " + String.join(", ", strip.reasons()) + "."));
        }
        annotations.addAll(annotator.of(strip.window()));
        return annotations;
    }
}

package dev.isoline.ecg.wfdb;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.Faults;
import dev.isoline.ecg.Lead;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A record of several segments, of fixed or of variable layout (header(5)): one after the other, a
 * null segment is a gap.
 */
final class WfdbSegments implements WfdbFrames {

    private final WfdbHeader wfdb;
    private final RecordingFiles files;
    private final Faults faults;
    private final List<WfdbSegment> segments;
    private final Set<String> formats = new LinkedHashSet<>();
    private WfdbLayout layout;
    private Optional<LocalDateTime> start;
    private long frames;
    private int next;
    private long nextBegins;
    private WfdbRecord open;
    private WfdbHeader openHeader;
    private long openAt;

    WfdbSegments(WfdbHeader wfdb, RecordingFiles files, Faults faults) throws IOException {
        this.wfdb = wfdb;
        this.files = files;
        this.faults = faults;
        start = wfdb.start();
        var first = wfdb.segments().get(0);
        boolean variable = first.frames() == 0 && !first.isNull();
        if (variable) {
            layout = new WfdbLayout(header(first, 0), true, faults);
        }
        segments = variable ? wfdb.segments().subList(1, wfdb.segments().size()) : wfdb.segments();
        look();
        check();
    }

    /** Looks at the headers of all segments, in order. */
    private void look() throws IOException {
        for (int i = 0; i < segments.size(); i++) {
            var segment = segments.get(i);
            if (!segment.isNull() && segment.frames() > 0) {
                try {
                    look(header(segment, i), i);
                } catch (RecordingException e) {
                    faults.found(e.getMessage());
                }
            }
            frames += segment.frames();
        }
    }

    private void look(WfdbHeader header, int index) throws RecordingException {
        if (layout == null) {
            layout = new WfdbLayout(header, false, faults);
        }
        layout.lookAt(header, place(index));
        for (var signal : header.signals()) {
            formats.add(String.valueOf(signal.format().number()));
        }
        if (start.isEmpty()) {
            long nanos = Math.round(frames / wfdb.hz() * 1e9);
            start = header.start().map(time -> time.minusNanos(nanos));
        }
    }

    private void check() throws RecordingException {
        if (layout == null) {
            throw new RecordingException("The WFDB record holds no samples.");
        }
        if (wfdb.frames() > 0 && wfdb.frames() != frames) {
            faults.found(
                    "The WFDB header announces "
                            + wfdb.frames()
                            + " frames and its segments add up to "
                            + frames
                            + ".");
        }
        wfdb.checkLength(frames);
    }

    /** The header of a segment, checked against what the record says of it. */
    private WfdbHeader header(WfdbSegment segment, int index) throws IOException {
        if (!files.names().contains(segment.headerFile())) {
            throw new RecordingException(
                    place(index) + "Its header is not beside the header of the WFDB record.");
        }
        var header = WfdbHeader.read(files, segment.headerFile());
        if (header.isSegmented()) {
            throw new RecordingException(place(index) + "A segment may not have segments itself.");
        }
        if (header.hz() != wfdb.hz()) {
            throw new RecordingException(
                    place(index) + "The segment has another sampling frequency than the record.");
        }
        if (header.frames() != 0 && header.frames() != segment.frames()) {
            throw new RecordingException(
                    place(index)
                            + "The segment is "
                            + header.frames()
                            + " frames long, the record announces "
                            + segment.frames()
                            + ".");
        }
        return header.withFrames(segment.frames());
    }

    /** Counted as in the header, from 1. */
    private String place(int index) {
        return "Segment " + (index + 1 + wfdb.segments().size() - segments().size()) + ": ";
    }

    private List<WfdbSegment> segments() {
        return segments == null ? wfdb.segments() : segments;
    }

    @Override
    public List<Lead> leads() {
        return layout.leads();
    }

    @Override
    public int perFrame() {
        return layout.perFrame();
    }

    @Override
    public long frames() {
        return frames;
    }

    @Override
    public String formats() {
        return String.join("+", formats);
    }

    @Override
    public Optional<LocalDateTime> start() {
        return start;
    }

    @Override
    public Optional<Block> next() throws IOException {
        while (open != null || openNext()) {
            var all = open.nextOfAll();
            if (all.isPresent()) {
                return Optional.of(block(all.get()));
            }
            close();
        }
        return Optional.empty();
    }

    private Block block(List<int[]> all) {
        long count = open.position() - openAt;
        var block =
                new Block(
                        (nextBegins - segments.get(next - 1).frames() + openAt) * perFrame(),
                        layout.of(openHeader, all, (int) count * perFrame()));
        openAt = open.position();
        return block;
    }

    /** Opens the next segment that can be read; false when there is none. */
    private boolean openNext() throws IOException {
        while (next < segments.size() && open == null) {
            var segment = segments.get(next++);
            nextBegins += segment.frames();
            if (!segment.isNull() && segment.frames() > 0) {
                open(segment);
            }
        }
        return open != null;
    }

    private void open(WfdbSegment segment) throws IOException {
        try {
            openHeader = header(segment, next - 1);
            open = new WfdbRecord(openHeader, files, faults, place(next - 1));
            openAt = 0;
        } catch (RecordingException e) {
            faults.found(e.getMessage());
        }
    }

    @Override
    public void close() throws IOException {
        if (open != null) {
            open.close();
            open = null;
        }
    }
}

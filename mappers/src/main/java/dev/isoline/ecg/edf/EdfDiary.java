package dev.isoline.ecg.edf;

import dev.isoline.ecg.DiaryEntry;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.edf.TimestampedAnnotations.Tal;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Annotations of an EDF+ file that keep no time, gathered while its data records are read. */
final class EdfDiary {

    /** Enough for a fortnight; what a hostile file adds beyond is left out. */
    private static final int MOST = 10_000;

    private final List<EdfSignal> signals;
    private final List<Tal> lists = new ArrayList<>();

    EdfDiary(List<EdfSignal> signals) {
        this.signals = signals.stream().filter(EdfSignal::isAnnotations).toList();
    }

    /** Adds those of the data record that begins at the byte. */
    void add(ByteBuffer window, int start) {
        for (EdfSignal signal : signals) {
            var bytes = window.slice(start + 2 * signal.offset(), 2 * signal.samples());
            if (hasMoreThanTime(bytes) && lists.size() < MOST) {
                add(bytes);
            }
        }
    }

    /** A note that cannot be read is no reason to refuse the ECG. */
    private void add(ByteBuffer bytes) {
        try {
            lists.addAll(TimestampedAnnotations.read(bytes));
        } catch (RecordingException unreadable) {
            // its data record goes without notes
        }
    }

    /** Whether anything stands behind a first list that is a time alone: {@code +1.5 0x14 0x14}. */
    private static boolean hasMoreThanTime(ByteBuffer bytes) {
        int at = 0;
        while (at < bytes.limit() && bytes.get(at) != 0x14) {
            at++;
        }
        for (int i = at + 1; i < bytes.limit(); i++) {
            if (bytes.get(i) != 0 && bytes.get(i) != 0x14) {
                return true;
            }
        }
        return false;
    }

    /** On the time axis that begins at {@code first}; what was noted before it is left out. */
    List<DiaryEntry> entries(BigDecimal first, BigDecimal hz) {
        var entries = new ArrayList<DiaryEntry>();
        for (Tal list : lists) {
            long at = samples(list.onset().subtract(first), hz);
            for (String text : list.texts()) {
                if (!text.isBlank() && at >= 0) {
                    entries.add(new DiaryEntry(at, samples(list.duration(), hz), text.strip()));
                }
            }
        }
        entries.sort(Comparator.comparingLong(DiaryEntry::sample));
        return List.copyOf(entries);
    }

    private static long samples(BigDecimal seconds, BigDecimal hz) {
        return seconds.multiply(hz).setScale(0, RoundingMode.HALF_UP).longValue();
    }
}

package dev.isoline.ecg.edf;

import dev.isoline.ecg.DiaryEntry;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.edf.TimestampedAnnotations.Tal;
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

    EdfDiary(EdfHeader edf) {
        this.signals = edf.signals().stream().filter(edf::isAnnotations).toList();
    }

    /** Adds those of a data record of the window. */
    void add(EdfRecords records, int record) {
        for (EdfSignal signal : signals) {
            var bytes = records.bytes(record, signal);
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

    /** On the time axis of the clock; what was noted before its start is left out. */
    List<DiaryEntry> entries(EdfClock clock) {
        var entries = new ArrayList<DiaryEntry>();
        for (Tal list : lists) {
            long at = clock.position(list.onset());
            for (String text : list.texts()) {
                if (!text.isBlank() && at >= 0) {
                    entries.add(new DiaryEntry(at, clock.samples(list.duration()), text.strip()));
                }
            }
        }
        entries.sort(Comparator.comparingLong(DiaryEntry::sample));
        return List.copyOf(entries);
    }
}

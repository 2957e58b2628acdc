package dev.isoline.dicom;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The data elements of PS3.6 chapters 6 to 8, with repeating groups (PS3.5 7.6), and of PS3.7 annex
 * E. The rows stand in dictionary.tsv, whose head names the edition.
 *
 * <p>What {@link Tag} names has its VR compiled in ({@link TagVr}), so a program that writes
 * objects never opens the table. It is searched as it stands in the file: only a row that is asked
 * for is taken apart.
 */
public final class Dictionary {

    /**
     * A row of the registry.
     *
     * @param vr where the standard gives a choice, "OB or OW" and the like are OW (the only one in
     *     Implicit VR, PS3.5 A.1) and "US or SS" is US
     * @param vm value multiplicity, such as {@code 1-n}
     * @param keyword such as {@code WaveformData}; empty for a few retired elements
     * @param name as PS3.6 prints it
     */
    public record Entry(Vr vr, String vm, String keyword, String name, boolean retired) {}

    /** Digits of a tag that stand for any, where a row is a repeating group. */
    private static final List<String> REPEATING =
            List.of("--xx----", "------xx", "------x-", "----xxx-", "----xxxx");

    private static final int KEY = 8;
    private static final Map<Integer, Entry> FOUND = new ConcurrentHashMap<>();

    /** Read on first use. */
    private static final class Table {
        private static final byte[] BYTES = read();

        private static byte[] read() {
            try (var in = Dictionary.class.getResourceAsStream("dictionary.tsv")) {
                return in.readAllBytes();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private Dictionary() {}

    /** VR of a tag: of the dictionary, else LO for a private creator, else UN (PS3.5 6.2.2). */
    public static Vr vr(int tag) {
        if (Tag.isPrivate(tag)) {
            return Tag.isPrivateCreator(tag) ? Vr.LO : Vr.UN;
        }
        Vr compiled = TagVr.of(tag);
        if (compiled != null) {
            return compiled;
        }
        Entry entry = find(tag);
        return entry == null ? Vr.UN : entry.vr();
    }

    /** The row of a tag; none for private elements and what this edition does not know. */
    public static Optional<Entry> entry(int tag) {
        return Optional.ofNullable(Tag.isPrivate(tag) ? null : find(tag));
    }

    /** Name as PS3.6 prints it. */
    public static Optional<String> name(int tag) {
        return entry(tag).map(Entry::name).filter(name -> !name.isEmpty());
    }

    /** Keyword, such as {@code WaveformData}. */
    public static Optional<String> keyword(int tag) {
        return entry(tag).map(Entry::keyword).filter(keyword -> !keyword.isEmpty());
    }

    private static Entry find(int tag) {
        Entry known = FOUND.get(tag);
        if (known != null) {
            return known;
        }
        int line = line(tag);
        if (line < 0) {
            return null;
        }
        Entry entry = entryAt(line);
        FOUND.put(tag, entry);
        return entry;
    }

    private static int line(int tag) {
        byte[] key = key(tag);
        int line = search(key);
        for (int i = 0; line < 0 && i < REPEATING.size(); i++) {
            line = search(masked(key, REPEATING.get(i)));
        }
        return line;
    }

    private static byte[] key(int tag) {
        byte[] key = new byte[KEY];
        for (int i = 0; i < KEY; i++) {
            key[i] = (byte) "0123456789ABCDEF".charAt(tag >>> 28 - 4 * i & 0xF);
        }
        return key;
    }

    private static byte[] masked(byte[] key, String mask) {
        byte[] masked = key.clone();
        for (int i = 0; i < KEY; i++) {
            masked[i] = mask.charAt(i) == 'x' ? (byte) 'x' : key[i];
        }
        return masked;
    }

    /** Where the line of a key starts, or -1; lines are in the order of their keys. */
    private static int search(byte[] key) {
        int low = 0;
        int high = Table.BYTES.length;
        while (low < high) {
            int line = lineStart(low + high >>> 1);
            int order = Arrays.compare(Table.BYTES, line, line + KEY, key, 0, KEY);
            if (order == 0) {
                return line;
            }
            if (order < 0) {
                low = lineEnd(line) + 1;
            } else {
                high = line;
            }
        }
        return -1;
    }

    private static int lineStart(int within) {
        int start = within;
        while (start > 0 && Table.BYTES[start - 1] != '\n') {
            start--;
        }
        return start;
    }

    private static int lineEnd(int within) {
        int end = within;
        while (Table.BYTES[end] != '\n') {
            end++;
        }
        return end;
    }

    private static Entry entryAt(int line) {
        String[] cells =
                new String(Table.BYTES, line, lineEnd(line) - line, StandardCharsets.US_ASCII)
                        .split("\t", -1);
        return new Entry(one(cells[1]), cells[2], cells[3], cells[4], cells.length > 5);
    }

    private static Vr one(String choice) {
        boolean words = choice.endsWith(" or OW");
        return words ? Vr.OW : Vr.valueOf(choice.substring(0, 2));
    }
}

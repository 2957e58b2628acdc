package dev.isoline.dicom;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** The data elements this toolkit names, PS3.6 chapter 6; the rows stand in dictionary.tsv. */
public final class Dictionary {

    private record Row(int tag, Vr vr, String keyword, String name) {}

    private static final Map<Integer, Row> ROWS = read();

    private Dictionary() {}

    /** VR of a tag: of the dictionary, else LO for a private creator, else UN (PS3.5 6.2.2). */
    public static Vr vr(int tag) {
        Row row = ROWS.get(tag);
        if (row != null) {
            return row.vr();
        }
        return Tag.isPrivateCreator(tag) ? Vr.LO : Vr.UN;
    }

    /** Name as PS3.6 prints it. */
    public static Optional<String> name(int tag) {
        return Optional.ofNullable(ROWS.get(tag)).map(Row::name);
    }

    /** Keyword, such as {@code WaveformData}. */
    public static Optional<String> keyword(int tag) {
        return Optional.ofNullable(ROWS.get(tag)).map(Row::keyword);
    }

    private static Map<Integer, Row> read() {
        var rows = new HashMap<Integer, Row>();
        try (var in = Dictionary.class.getResourceAsStream("dictionary.tsv");
                var lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                if (!line.startsWith("#")) {
                    Row row = row(line.split("\t"));
                    rows.put(row.tag(), row);
                }
            }
            return rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Row row(String[] cells) {
        return new Row(
                Integer.parseUnsignedInt(cells[0], 16), Vr.valueOf(cells[1]), cells[3], cells[4]);
    }
}
